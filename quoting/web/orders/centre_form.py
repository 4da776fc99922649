"""The part of the order form for one piece from the centre outwards."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from wtforms import Field, Form

from quoting.core.ground.place import Place
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn
from quoting.web.forms.lines import typed_of
from quoting.web.forms.sent import Sent
from quoting.web.orders.body_form import BodyForm, Fields
from quoting.web.orders.centre_sums import (
    growth_words,
    longer_words,
    rounds_sum,
    rounds_words,
)
from quoting.wording import SHAPES

_SIZE_HINTS = {
    Counting.CLUSTERS: "Longer than wide, or wider than long: a rectangle from a first chain",
    Counting.SOLID: "Longer than wide, or wider than long: a rectangle from a first chain",
    Counting.CIRCLE: "A circle goes by its width alone; its length may stay blank",
    Counting.HEXAGON: "A hexagon goes by its width, from side to side; its length may stay blank",
}

_COUNTS_FOR = {
    "first_side": {Counting.SOLID},
    "side_chains": {Counting.CLUSTERS},
    "starts_on": {shape for shape in Counting if not shape.goes_by_width},
}
"""Fields that count for some shapes alone."""


def shapes() -> list[tuple[str, str]]:
    """Return the shapes that a piece can have, each with its words."""
    return [(shape.value, words) for shape, words in SHAPES.items()]


def _start(workshop: Workshop, yarn: Yarn) -> Mapping[str, object]:
    """Return one stripe of a yarn's first colour, in rounds as a motif of that yarn has them."""
    shape = next((m.counting for m in workshop.motifs if m.yarn == yarn.name), Counting.SOLID)
    stripe = {"colour": next(iter(yarn.colours)), "rounds": "1"}
    return {"centre": {"counting": shape.value, "side_chains": "1", "stripes": [stripe]}}


def counts_for(field: str, shape: str) -> bool:
    """Return whether a field counts for a shape, as it was typed; for one that is none, it does."""
    others = {each.value for each in Counting} - {each.value for each in _COUNTS_FOR[field]}
    return shape not in others


def _rests(sent: Sent) -> Collection[str]:
    """Return the fields that do not count for the shape that is typed."""
    shape = sent.get("blanket.centre.counting", "")
    return [f"blanket.centre.{field}" for field in _COUNTS_FOR if not counts_for(field, shape)]


def _size_hint(fields: Form) -> str:
    return _SIZE_HINTS.get(typed_of(fields, "counting").data, "")


def _beside(code: str, place: Place, fields: Fields) -> Sequence[Field] | None:
    """Return the fields of a mistake that rests on several."""
    other = {"rounds-and-repeats": "rounds", "fitted-and-repeats": "fitted"}.get(code)
    return None if other is None else [fields[str(place)], fields[str(place.outer / other)]]


CENTRE_FORM = BodyForm(
    words="from the centre outwards",
    templates="orders/centre",
    start=_start,
    own_counts=("rounds", "repeats", "starts_on"),
    new_lines={"centre.stripes": {"colour": "", "rounds": "1"}},
    line_names={"centre.stripes": "Stripe"},
    rests=_rests,
    size_hint=_size_hint,
    beside=_beside,
    sums=(shapes, counts_for, rounds_sum, rounds_words, growth_words, longer_words),
)
