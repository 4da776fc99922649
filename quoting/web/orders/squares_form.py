"""The part of the order form for motifs that are joined."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from itertools import cycle, islice

from wtforms import Field

from quoting.core.ground.place import Place
from quoting.core.order.joined_squares import SEWN, JoinMethod
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import SQUARES
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn
from quoting.web.forms.sent import Sent
from quoting.web.orders.body_form import BodyForm, Fields
from quoting.web.orders.layout_lines import squares_deed
from quoting.web.orders.squares_sums import (
    across_sums,
    across_words,
    edges_sum,
    join_yarn_words,
    motif_rounds,
    motif_stitches,
)
from quoting.wording import Speech, join_choice

_NO_MOTIF_ROUNDS = 1


def joins(say: Speech) -> list[tuple[str, str]]:
    """Return the ways to join motifs, each with its words."""
    return [(method.value, join_choice(method, say)) for method in JoinMethod]


def may_be_sewn(join: str) -> bool:
    """Return whether a join, as it was typed, is sewn; one that is none may be."""
    return join not in {method.value for method in JoinMethod if method not in SEWN}


def squares_measured(workshop: Workshop) -> list[Motif]:
    """Return the motifs that can be joined in columns and rows."""
    return [motif for motif in workshop.motifs if motif.counting in SQUARES]


def _start(workshop: Workshop, yarn: Yarn) -> Mapping[str, object]:
    """Return one layout of a yarn's colours in turn, for the first square that is of that yarn."""
    motifs = sorted(squares_measured(workshop), key=lambda motif: motif.yarn != yarn.name)
    motif = next(iter(motifs), None)
    rounds = motif.rounds if motif else _NO_MOTIF_ROUNDS
    colours = [{"value": colour} for colour in islice(cycle(yarn.colours), rounds)]
    begins: dict[str, object] = {"layouts": [{"share": "", "colours": colours}]}
    return {"squares": begins | {"motif": motif.name if motif else ""}}


def _rests(sent: Sent) -> Collection[str]:
    """Return the field of a needleful where the join that is typed is not sewn."""
    sewn = may_be_sewn(sent.get("blanket.squares.join.method", ""))
    return [] if sewn else ["blanket.squares.join.needleful"]


def _beside(code: str, place: Place, fields: Fields) -> Sequence[Field] | None:
    """Return the fields of a mistake that rests on several, and the field of a list's one text."""
    match code:
        case "share-and-count":
            return [fields[str(place)], fields[str(place.outer / "share")]]
        case "layouts-or-pool":
            return [fields["blanket.squares.layouts"], fields["blanket.squares.pool.colours"]]
    value = fields.get(str(place / "value"))
    return None if value is None else [value]


SQUARES_FORM = BodyForm(
    words="in motifs that are joined",
    templates="orders/squares",
    start=_start,
    own_counts=("rounds", "columns", "rows"),
    takes_over=("stitch",),
    new_lines={
        "squares.layouts": {"colours.1.value": ""},
        "layouts.colours": {"value": ""},
        "pool.colours": {"value": ""},
        "pool.outer": {"value": ""},
    },
    line_names={
        "squares.layouts": "Layout",
        "layouts.colours": "round",
        "pool.colours": "Colour to mix",
        "pool.outer": "Last rounds, round",
    },
    deed=squares_deed,
    rests=_rests,
    beside=_beside,
    sums=(
        joins,
        may_be_sewn,
        across_sums,
        across_words,
        motif_rounds,
        motif_stitches,
        layouts_made,
        edges_sum,
        join_yarn_words,
    ),
)
