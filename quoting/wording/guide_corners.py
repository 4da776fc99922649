"""How the corners of a border are worked, and how many stitches lie along its sides."""

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
