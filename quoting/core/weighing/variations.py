"""An order with one of its counts varied by one, either way."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from enum import StrEnum

from quoting.core.ground.errors import Refused
from quoting.core.order.design import Design, EndsBecome


class Varied(StrEnum):
    """What there is one less or one more of."""

    STITCHES = "stitches"
    STITCH_REPEAT = "stitch-repeat"
    REPEAT = "repeat"
    STRIPE = "stripe"
    ROW = "row"
    ROUND = "round"
    ROUND_REPEAT = "round-repeat"
    START = "start"
    COLUMN = "column"
    MOTIF_ROW = "motif-row"
    BORDER_ROUND = "border-round"


@dataclass(frozen=True, slots=True, kw_only=True)
class Variation:
    """A design that has one more of something, or one less."""

    varied: Varied
    more: bool
    design: Design


def both_ways(varied: Varied, changed: Callable[[int], Design | None]) -> Iterator[Variation]:
    """Yield what is left of one less and one more, those that no design can be left out."""
    for by in (-1, 1):
        design = None
        with suppress(Refused):
            design = changed(by)
        if design is not None:
            yield Variation(varied=varied, more=by > 0, design=design)


def with_border_rounds(design: Design, by: int) -> Design | None:
    """Return a design with one round less or more, at the outside; none that it cannot do without.

    A border that has one round is left out with it, unless ends are enclosed in it.
    """
    *inner, last = design.border
    kept = [replace(last, rounds=last.rounds + by)] if last.rounds + by else []
    if not (inner or kept) and design.ends is EndsBecome.ENCLOSED:
        return None
    return replace(design, border=(*inner, *kept))
