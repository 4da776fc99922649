"""How the corners of a border are worked, how many stitches lie along its sides, and over what."""

from __future__ import annotations

from quoting.core.plan.corners import CornerWork, Into
from quoting.core.plan.passes import Pass
from quoting.core.workshop.stitches import Stitch
from quoting.wording.speech import Speech

_INTO = {
    Into.BODY: "in one at each corner",
    Into.STITCH: "in each corner stitch",
    Into.SPACE: "in each corner space",
}

TOP_SIDE_BOTTOM_SIDE = 4


def corner_words(corner: CornerWork, stitch: str, speech: Speech) -> str:
    """Return what is worked at each corner: `(sc, ch 2, sc) in each corner space`."""
    if not corner.stitches:
        return f"chain {corner.chains} at each corner"
    if not corner.chains:
        return f"{corner.before} {speech.stitch(stitch)} {_INTO[corner.into]}"
    before, after = (_some(count, stitch, speech) for count in (corner.before, corner.after))
    chains = f"{speech.stitch(Stitch.CH)} {corner.chains}"
    return f"({before}, {chains}, {after}) {_INTO[corner.into]}"


def _some(count: int, stitch: str, speech: Speech) -> str:
    return speech.stitch(stitch) if count == 1 else f"{count} {speech.stitch(stitch)}"


def sides_words(worked: Pass, speech: Speech) -> str:
    """Return the stitches along the sides, between the corners; nothing where none are known."""
    sides = [speech.number(count) for count in worked.sides]
    if len(sides) == 1:
        return ""
    if len(set(worked.sides)) == 1:
        return f"{sides[0]} along each side"
    if len(sides) != TOP_SIDE_BOTTOM_SIDE or worked.sides[1] != worked.sides[3]:
        return ""
    top, side, bottom, _ = sides
    ends = f"{top} along the top and the bottom"
    if top != bottom:
        ends = f"{top} along the top, {bottom} along the bottom"
    return f"{ends}, {side} along each side"


def spread_words(worked: Pass, speech: Speech) -> str:
    """Return how sides take up more or fewer stitches than they are worked into.

    `30 times two together along each side, spread evenly`; nothing where there is one in each.
    """
    pairs = list(zip(worked.sides, worked.edges, strict=True))
    wheres: list[tuple[str, tuple[int, int | None]]] = []
    if len(pairs) == 1:
        wheres = [("", pairs[0])]
    elif len(set(pairs)) == 1:
        wheres = [(" along each side", pairs[0])]
    elif len(pairs) == TOP_SIDE_BOTTOM_SIDE and pairs[1] == pairs[3]:
        top, side, bottom, _ = pairs
        wheres = [
            (" along the top", top),
            (" along the bottom", bottom),
            (" along each side", side),
        ]
        if top == bottom:
            wheres = [(" along the top and the bottom", top), (" along each side", side)]
    said = [
        f"{_over(count, edge, speech)}{where}"
        for where, (count, edge) in wheres
        if edge not in (None, count)
    ]
    return f"{', '.join(said)}, spread evenly" if said else ""


def _over(count: int, edge: int | None, speech: Speech) -> str:
    """Return what becomes of a side's stitches; two in one or two together, as far as that goes."""
    assert edge is not None, "asked only of a side along stitches"  # noqa: S101
    more = count - edge
    if abs(more) > min(count, edge):
        over = speech.count(edge, "stitch", "stitches")
        return f"{speech.number(count)} over {over}"
    done = "two in one" if more > 0 else "two together"
    return f"{speech.count(abs(more), 'time')} {done}"
