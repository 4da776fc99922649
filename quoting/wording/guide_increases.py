"""Where rounds without chains at corners grow: at six corners, or evenly all round.

Where it is done is common practice: over one another at the corners of a hexagon, moved from round
to round in a circle. The counts are those of `core.workshop.rounds`.
"""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.workshop.rounds import Counting, Rounds
from quoting.wording.speech import Speech

PAIR = SECOND = 2
_EVERY = ("each", "every second", "every third")

MOVED = (
    "Begin every other round with half of what lies between two of these, so that none lies over "
    "those of the round inside: else corners form."
)


def corners_begun(counted: Rounds, speech: Speech) -> str:
    """Return which stitches of round 1 are the corners of a hexagon, after a comma; or nothing."""
    if counted.counting is not Counting.HEXAGON:
        return ""
    corners = f"the {speech.number(counted.corners)} corner stitches"
    return f", {_EVERY[_each(counted) - 1]} of them one of {corners}"


def corner_goes_on(counted: Rounds, number: int | None = None) -> str:
    """Return which stitch of those at a corner is the corner of the next round.

    Of two it is the second (common practice); of four the second and the third in turn, so that
    the corners stay in line. `number` is the round, where one is told.
    """
    several = _each(counted) + 1
    if several % 2:
        which = f"the middle one of the {several}"
    elif several == PAIR:
        which = "the second of the 2"
    elif number is not None:
        which = f"the {'third' if number % 2 else 'second'} of the {several}"
    else:
        which = f"the second of the {several}, in every other round the third,"
    return f"{which} is the corner stitch of the next round"


def spread_words(counted: Rounds, name: str, speech: Speech) -> str:
    """Return how every round of a circle grows."""
    growth = speech.number(counted.growth)
    return (
        f"{growth} {name} more than the one inside it, made by {growth} times 2 {name} in one, "
        "spread evenly: in round 2 in each stitch, in round 3 in every second, in round 4 in every "
        "third, and so on"
    )


def hexagon_round(counted: Rounds, number: int, name: str, speech: Speech) -> str:
    """Return one later round of a hexagon, with its stitches between two corners."""
    each = _each(counted)
    between = each * (number - 1) - 1
    if not between:
        return f"{each + 1} {name} in each stitch; {corner_goes_on(counted, number)}"
    along = "the one" if between == 1 else f"each of the {speech.number(between)}"
    return (
        f"{each + 1} {name} in each corner stitch, one {name} in {along} between two corners; "
        f"{corner_goes_on(counted, number)}"
    )


def circle_round(counted: Rounds, number: int, name: str, speech: Speech) -> str:
    """Return one later round of a circle: where two are worked in one, and what lies between.

    Every other round begins in the middle of what lies between two of these.
    """
    if number == SECOND:
        return f"2 {name} in each stitch"
    between, times = number - 2, counted.growth
    two = f"2 {name} in the next"
    if number % 2:
        again = f"{_ones(between, 'next', name, speech)}, {two}"
        return f"({again}) {speech.number(times)} times"
    return "; ".join(_moved(between, times, name, speech))


def _moved(between: int, times: int, name: str, speech: Speech) -> Iterator[str]:
    two, half = f"2 {name} in the next", between // 2
    yield f"{_ones(half, 'first', name, speech)}, {two}"
    again = f"{_ones(between, 'next', name, speech)}, {two}"
    yield f"({again}) {speech.number(times - 1)} times"
    yield _ones(between - half, "last", name, speech)


def _ones(count: int, which: str, name: str, speech: Speech) -> str:
    """Return one stitch in each of so many: `one dc in each of the next 3`."""
    if count == 1:
        return f"one {name} in the {which}"
    return f"one {name} in each of the {which} {speech.number(count)}"


def _each(counted: Rounds) -> int:
    """Return how many stitches more a round has at each corner."""
    return counted.growth // counted.corners
