"""How many stitches each round of a border has.

Counts along the sides follow from the gauges; the habits at corners are common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode
from quoting.core.ground.money import round_count
from quoting.core.ground.sameness import NEAR
from quoting.core.order.design import BorderBand, Corner
from quoting.core.plan.corners import CornerWork, Into
from quoting.core.plan.gauge import Gauge
from quoting.core.plan.multiples import nearest_multiple
from quoting.core.workshop.rounds import FLAT_FACTOR
from quoting.core.workshop.stitches import HEIGHT_RATIO, ROW_END_STITCHES, Stitch

CORNERS = 4
CHAINS_AT_A_CORNER = 2
EXTRA_AT_A_CORNER = {Corner.CHAIN: 0, Corner.ONE_EXTRA: 1, Corner.THREE_IN_ONE: 2}
STITCHES_EACH_WAY = {Stitch.SC: 1, Stitch.HDC: 1, Stitch.DC: 2, Stitch.TR: 3}
"""Stitches worked on each side of the chains in a corner space of a later round."""

RATIO_TOLERANCE = 0.10


@dataclass(frozen=True, slots=True, kw_only=True)
class Edging:
    """A border as it is worked: what was asked, its gauge, and the repeat of its pattern.

    Between two corners a side is as a row of its own: `multiple`·k + `plus` stitches.
    """

    band: BorderBand
    gauge: Gauge
    multiple: int = 1
    plus: int = 0

    def closed(self, stitches: int) -> int:
        """Return the nearest count along one side that is a whole number of repeats."""
        if (self.multiple, self.plus) == (1, 0):
            return stitches
        return nearest_multiple(stitches, self.multiple, self.plus)


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """One border round: its stitches, and the corner chains beside them.

    `sides` are the stitches along each side, in the order of the rim; `corner` is worked at each
    corner, if there are any, its stitches besides those of the first round's sides. `edges` are
    what the sides would have with one stitch in each of what they are worked into, and the corners
    as they are; None along the ends of rows.
    """

    stitch: str
    colour: str
    stitches: int
    chains: int
    height_cm: float
    sides: tuple[int, ...]
    corner: CornerWork | None
    edges: tuple[int | None, ...] = ()


@dataclass(frozen=True, slots=True)
class StitchesAlong:
    """A side of the body that is the tops or the chain of so many stitches."""

    stitches: int
    gauge: Gauge


@dataclass(frozen=True, slots=True)
class RowEnds:
    """A side of the body that is the ends of its rows, each in its gauge."""

    gauges: Sequence[Gauge]


Rim: TypeAlias = Sequence[StitchesAlong | RowEnds]
"""The sides that a border is worked along, in the order that its first round comes to them."""


def corners_of(rim: Rim) -> int:
    """Return the corners of a rim: one after each side, none where there is but one side."""
    return len(rim) if len(rim) > 1 else 0


def border_depth_cm(border: Sequence[Edging]) -> float:
    """Return the depth of the border on one side: the heights of its rounds."""
    return sum(edging.band.rounds * edging.gauge.height_cm for edging in border)


def border_rounds(border: Sequence[Edging], rim: Rim) -> tuple[Round, ...]:
    """Return every round of the border, from the body outwards.

    What lies flat along each side grows from round to round; each round then has the whole
    repeats of its pattern that are nearest to that.
    """
    rounds: list[Round] = []
    sides: list[int] = []
    corners = corners_of(rim)
    for edging in border:
        more = growth(edging.band.corner, edging.gauge, corners) // max(1, corners)
        for _ in range(edging.band.rounds):
            sides = [side + more for side in sides] or [_along(side, edging) for side in rim]
            extra = EXTRA_AT_A_CORNER[border[0].band.corner] * corners
            corner = _later_corner(edging, rounds[-1], corners) if rounds else _first_corner(edging)
            edges = tuple(_edges(rim, rounds, more if corners else 0))
            closed = tuple(map(edging.closed, sides))
            made = _round(edging, closed, extra, corner, corners)
            rounds.append(replace(made, edges=edges))
    return tuple(rounds)


def _edges(rim: Rim, inside: Sequence[Round], more: int) -> Iterator[int | None]:
    """Yield what each side of the next round is worked into; corners add `more` to each."""
    if inside:
        yield from (side + more for side in inside[-1].sides)
        return
    for side in rim:
        yield side.stitches if isinstance(side, StitchesAlong) else None


def _first_corner(edging: Edging) -> CornerWork:
    """Return what the first round does at each corner of the body.

    With stitches more than its sides have, they share one stitch of the body (common practice).
    """
    if edging.band.corner is Corner.CHAIN:
        return CornerWork(into=Into.BODY, chains=CHAINS_AT_A_CORNER)
    return CornerWork(into=Into.BODY, before=EXTRA_AT_A_CORNER[edging.band.corner] + 1)


def _later_corner(edging: Edging, inside: Round, corners: int) -> CornerWork:
    """Return what a later round does at each corner of the one inside it."""
    into = Into.SPACE if inside.chains else Into.STITCH
    more = growth(edging.band.corner, edging.gauge, corners) // max(1, corners)
    there = more + (into is Into.STITCH)
    if edging.band.corner is not Corner.CHAIN:
        return CornerWork(into=into, before=there)
    each_way = STITCHES_EACH_WAY[edging.gauge.kind]
    return CornerWork(into=into, before=each_way, chains=CHAINS_AT_A_CORNER, after=there - each_way)


def growth(corner: Corner, gauge: Gauge, corners: int = CORNERS) -> int:
    """Return how many stitches a later round has more than the one inside it."""
    if corner is Corner.CHAIN and corners:
        return 2 * corners * STITCHES_EACH_WAY[gauge.kind]
    return flat_growth(gauge, corners)


def flat_growth(gauge: Gauge, corners: int = CORNERS) -> int:
    """Return the growth with which a round lies flat, as much at each corner.

    It is so many heights of the round over its width as the outline grows, at least two stitches a
    corner.
    """
    tall = gauge.height_cm / gauge.width_cm if gauge.swatched else HEIGHT_RATIO[gauge.kind]
    each = max(1, corners)
    least = 2 * corners if corners == CORNERS else each
    return max(least, each * round_count(FLAT_FACTOR[corners] * tall / each))


def row_end_ratio(ends: RowEnds, gauge: Gauge) -> float:
    """Return the border stitches that lie flat along one row end, on average."""
    if gauge.swatched:
        stitches = sum(row.height_cm for row in ends.gauges) / gauge.width_cm
    else:
        stitches = sum(ROW_END_STITCHES[row.kind] for row in ends.gauges)
    return stitches / len(ends.gauges)


def ratio_is_off(own: float, measured: float) -> bool:
    """Return whether the maker's own ratio is more than a tenth off the measured one."""
    return abs(own - measured) > RATIO_TOLERANCE * measured + NEAR


def border_cautions(border: Sequence[Edging], rim: Rim) -> Iterator[Caution]:
    """Yield what is to be said of row ends of the maker's own, and of corners that do not fit."""
    ends = next((side for side in rim if isinstance(side, RowEnds)), None)
    if border and ends and (own := border[0].band.row_end_ratio) is not None:
        measured = row_end_ratio(ends, border[0].gauge)
        if ratio_is_off(own, measured):
            yield for_maker(CautionCode.ROW_ENDS_OFF, ratio=own, measured=measured)
    corners = corners_of(rim)
    for place, edging in enumerate(border):
        later = edging.band.rounds - (place == 0)
        more = growth(edging.band.corner, edging.gauge, corners)
        flat = flat_growth(edging.gauge, corners)
        if later and more != flat:
            code = CautionCode.CORNERS_CUP if more < flat else CautionCode.CORNERS_RUFFLE
            yield for_maker(code, stitch=edging.band.stitch, more=more, flat=flat)


def _along(side: StitchesAlong | RowEnds, edging: Edging) -> int:
    """Return the stitches of a first round along one side.

    Along stitches there is one in each, or as many as the length takes where widths differ.
    """
    match side:
        case RowEnds():
            ratio = edging.band.row_end_ratio or row_end_ratio(side, edging.gauge)
            return round_count(ratio * len(side.gauges))
        case StitchesAlong():
            own_cm, border_cm = side.gauge.width_cm, edging.gauge.width_cm
            if abs(border_cm - own_cm) <= RATIO_TOLERANCE * own_cm + NEAR:
                return side.stitches
            return round_count(side.stitches * own_cm / border_cm)


def _round(
    edging: Edging, sides: tuple[int, ...], extra: int, corner: CornerWork, corners: int
) -> Round:
    return Round(
        stitch=edging.band.stitch,
        colour=edging.band.colour,
        stitches=sum(sides) + extra,
        chains=corners * corner.chains,
        height_cm=edging.gauge.height_cm,
        sides=sides,
        corner=corner if corners else None,
    )
