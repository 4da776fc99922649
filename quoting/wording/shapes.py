"""The size of a blanket by its shape: its sides, or how far it is across."""

from __future__ import annotations

from collections.abc import Callable

from quoting.core.ground.sameness import NEAR
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import Counting
from quoting.wording.catalogues import sentence
from quoting.wording.speech import Speech

_ACROSS = sentence("{length} across")
_CORNER_TO_CORNER = sentence("{width} from side to side and {height} from corner to corner")

_BY_WIDTH = {
    Counting.CIRCLE: "A circle goes by its width",
    Counting.HEXAGON: "A hexagon goes by its width, from side to side",
}

Side = Callable[[float], str]
"""Says one length with its unit."""


def shaped_size(
    width_cm: float,
    height_cm: float,
    centre: Counting | None,
    speech: Speech,
    *,
    plain: str = "",
    side: Side | None = None,
) -> str:
    """Return the size of a blanket that grows from its centre so, if it does: `120 cm across`.

    `side` says one length, and `plain` is what is said of a width and a length; as they are of a
    circle that was measured and is wider one way than the other.
    """
    say = side or speech.length
    if centre is Counting.CIRCLE and abs(width_cm - height_cm) < NEAR:
        return speech.worded(_ACROSS).format(length=say(width_cm))
    if centre is Counting.HEXAGON:
        text = speech.worded(_CORNER_TO_CORNER)
        return text.format(width=say(width_cm), height=say(height_cm))
    return plain or speech.size(width_cm, height_cm)


def made_size(plan: Plan, speech: Speech) -> str:
    """Return the size that a blanket comes out at, by its shape."""
    return shaped_size(plan.width_cm, plan.height_cm, plan.centre, speech)


def asked_size(quote: Quote, speech: Speech) -> str:
    """Return the size that was asked for: of what goes by its width, one length if both are it."""
    design = quote.order.design
    by_width = design.body.goes_by_width
    return size_words(design.width_cm, design.height_cm, speech, by_width=by_width)


def size_words(width_cm: float, height_cm: float, speech: Speech, *, by_width: bool) -> str:
    """Return a size that is asked for, of what goes `by_width` one length if both sides are it."""
    one_length = by_width and abs(width_cm - height_cm) < NEAR
    return speech.length(width_cm) if one_length else speech.size(width_cm, height_cm)


def width_note(plan: Plan) -> str:
    """Return that of what goes by its width no size has a length that counts, or nothing.

    Of all sizes of one design it is the same.
    """
    if plan.centre is None or not plan.centre.goes_by_width:
        return ""
    return f"{_BY_WIDTH[plan.centre]}: of each size the width alone counts, not the length."


def sides_note(plan: Plan) -> str:
    """Return what two bare figures of a size are, where they are no width and length, or nothing.

    Of all sizes of one design it is the same.
    """
    if plan.centre is not Counting.HEXAGON:
        return ""
    return "Of a hexagon, the first figure is from side to side, the second from corner to corner."
