"""The part of the order form for a body worked in rows."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from wtforms import Field

from quoting.core.ground.place import Place
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Yarn
from quoting.web.orders.body_form import BodyForm, Fields
from quoting.web.orders.row_sums import rows_sum, sections_words, stitches_sum, stitches_words

_STRIPE = {"colour": "", "rows": "1", "stitch": ""}


def _start(workshop: Workshop, yarn: Yarn) -> Mapping[str, object]:
    """Return one section of one stripe of a yarn's first colour."""
    del workshop
    return {"sections": [{"stripes": [{"colour": next(iter(yarn.colours)), "rows": "1"}]}]}


def _beside(code: str, place: Place, fields: Fields) -> Sequence[Field] | None:
    """Return the fields of a mistake that rests on several."""
    match code:
        case "share-and-repeats":
            return [fields[str(place)], fields[str(place.outer / "share")]]
        case "fitted-and-repeats":
            return [fields[str(place)], fields[str(place.outer / "fitted")]]
        case "no-shares":
            return [field for field in _shares(fields) if field.data == 0]
    return None


def _shares(fields: Fields) -> Iterator[Field]:
    for name, field in fields.items():
        if name.startswith("blanket.sections.") and name.endswith(".share"):
            yield field


ROWS_FORM = BodyForm(
    words="in rows, from edge to edge",
    templates="orders/rows",
    start=_start,
    own_counts=("stitches", "multiple", "plus"),
    new_lines={
        "stripes": _STRIPE,
        "first_rows": _STRIPE,
        "last_rows": _STRIPE,
        "sections": {f"stripes.1.{name}": text for name, text in _STRIPE.items()},
    },
    line_names={
        "first_rows": "First rows, stripe",
        "last_rows": "Last rows, stripe",
        "sections": "Section",
        "stripes": "stripe",
    },
    beside=_beside,
    sums=(stitches_sum, stitches_words, rows_sum, sections_words),
)
