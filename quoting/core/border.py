"""How many stitches each round of a border has.

Counts along the sides follow from the gauges; the habits at corners are common practice.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from quoting.core.design import BorderBand, Corner
from quoting.core.gauge import Gauge, Sureness
from quoting.core.money import round_count
from quoting.core.stitches import HEIGHT_RATIO, ROW_END_STITCHES, Stitch

CORNERS = 4
CHAINS_AT_A_CORNER = 2
FIRST_ROUND_EXTRA = {Corner.CHAIN: 0, Corner.ONE_EXTRA: 4, Corner.THREE_IN_ONE: 8}
STITCHES_EACH_WAY = {Stitch.SC: 1, Stitch.HDC: 1, Stitch.DC: 2, Stitch.TR: 3}
"""Stitches worked on each side of the chains in a corner space of a later round."""

RATIO_TOLERANCE = 0.10


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """One border round: its stitches, and the corner chains beside them."""

    stitch: str
    colour: str
    stitches: int
    chains: int
    height_cm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """What a border is worked round: its two rows of stitches and the gauges of its row ends."""

    first_row: int
    last_row: int
    row_gauges: Sequence[Gauge]


def border_depth_cm(border: Sequence[BorderBand], gauges: Mapping[str, Gauge]) -> float:
    """Return the depth of the border on one side: the heights of its rounds."""
    return sum(band.rounds * gauges[band.stitch].height_cm for band in border)


def border_rounds(
    border: Sequence[BorderBand], body: Body, gauges: Mapping[str, Gauge]
) -> tuple[Round, ...]:
    """Return every round of the border, from the body outwards."""
    rounds: list[Round] = []
    for band in border:
        gauge = gauges[band.stitch]
        for _ in range(band.rounds):
            if rounds:
                stitches = rounds[-1].stitches + growth(band.corner, gauge)
            else:
                stitches = _first_round(band, body, gauge)
            rounds.append(_round(band, stitches, gauge))
    return tuple(rounds)


def growth(corner: Corner, gauge: Gauge) -> int:
    """Return how many stitches a later round has more than the one inside it."""
    if corner is Corner.CHAIN:
        return 2 * CORNERS * STITCHES_EACH_WAY[gauge.kind]
    tall = (
        HEIGHT_RATIO[gauge.kind]
        if gauge.sureness is Sureness.ROUGH
        else gauge.height_cm / gauge.width_cm
    )
    return max(8, CORNERS * round_count(8 * tall / CORNERS))


def row_end_ratio(body: Body, gauge: Gauge) -> float:
    """Return the border stitches that lie flat along one row end, on average."""
    if gauge.sureness is Sureness.ROUGH:
        ends = sum(ROW_END_STITCHES[row.kind] for row in body.row_gauges)
    else:
        ends = sum(row.height_cm for row in body.row_gauges) / gauge.width_cm
    return ends / len(body.row_gauges)


def ratio_is_off(own: float, measured: float) -> bool:
    """Return whether the maker's own ratio is more than a tenth off the measured one."""
    return abs(own - measured) > RATIO_TOLERANCE * measured


def _first_round(band: BorderBand, body: Body, gauge: Gauge) -> int:
    ratio = band.row_end_ratio or row_end_ratio(body, gauge)
    side = round_count(ratio * len(body.row_gauges))
    return body.first_row + body.last_row + 2 * side + FIRST_ROUND_EXTRA[band.corner]


def _round(band: BorderBand, stitches: int, gauge: Gauge) -> Round:
    chains = CORNERS * CHAINS_AT_A_CORNER if band.corner is Corner.CHAIN else 0
    return Round(
        stitch=band.stitch,
        colour=band.colour,
        stitches=stitches,
        chains=chains,
        height_cm=gauge.height_cm,
    )
