"""How rounds from a centre are worked: round 1, each corner, what is between, how they close.

How a round is begun and how many stitches go into its corners is common practice; the counts are
those of `core.workshop.rounds`.
"""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.estimate.workload import TURN
from quoting.core.plan.corners import CornerWork, Into
from quoting.core.plan.passes import Pass, Plan
from quoting.core.workshop.rounds import CLUSTER, CORNER_CHAINS, Counting, Rounds
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop
from quoting.wording.foundation import chains_words
from quoting.wording.guide_corners import corner_words
from quoting.wording.guide_increases import (
    MOVED,
    circle_round,
    corner_goes_on,
    corners_begun,
    hexagon_round,
    spread_words,
)
from quoting.wording.phrases import capitalized
from quoting.wording.speech import Speech

SQUARE_CORNERS = 4
RING_CHAINS = 4
"""Chains that are joined to a ring, which round 1 is worked into (common practice)."""


def rounds_sentences(plan: Plan, stitch: str, workshop: Workshop, speech: Speech) -> Iterator[str]:
    """Yield how the rounds of a body, or of a motif, are worked, in whole sentences."""
    counted = plan.counted
    assert counted is not None, "asked only of what grows in rounds"  # noqa: S101
    yield f"Round 1: {_first_round(counted, stitch, workshop, speech)}."
    yield f"Each round after it: {_later_round(counted, stitch, speech)}."
    if counted.counting is Counting.CIRCLE:
        yield MOVED
    turn = workshop.turning_chain(stitch)
    if turn.chains:
        yield f"A round begins with {chains_words(turn, speech)}, and closes with a slip stitch."
    else:
        yield "A round begins without a chain and closes with a slip stitch."
    yield (
        "Turn the work after each round."
        if TURN in plan.chores
        else "Do not turn the work between rounds: the right side faces throughout."
    )


def round_sentence(worked: Pass, plan: Plan, workshop: Workshop, speech: Speech) -> str:
    """Return how one round of a body is worked, in a sentence without its number."""
    counted, name = plan.counted, speech.stitch(worked.stitch)
    assert counted is not None, "asked only of what grows in rounds"  # noqa: S101
    if worked.number == 1:
        said = _first_round(counted, worked.stitch, workshop, speech)
    elif counted.counting is Counting.CIRCLE:
        said = circle_round(counted, worked.number, name, speech)
    elif counted.counting is Counting.HEXAGON:
        said = hexagon_round(counted, worked.number, name, speech)
    else:
        said = _later_round(counted, worked.stitch, speech)
    return f"{capitalized(said)}."


def round_stitches(worked: Pass, counted: Rounds, speech: Speech) -> str:
    """Return the stitches of one round: `12 dc`, of clusters `12 dc in 4 clusters`."""
    count = worked.stitches[worked.stitch]
    said = f"{speech.number(count)} {speech.stitch(worked.stitch)}"
    if counted.counting is not Counting.CLUSTERS:
        return said
    return f"{said} in {speech.count(count // CLUSTER, 'cluster')}"


def growth_words(counted: Rounds, stitch: str, speech: Speech) -> str:
    """Return by how much rounds grow: `16 dc more in each round after it`."""
    more = f"{speech.number(counted.growth)} {speech.stitch(stitch)}"
    return f"{more} more in each round after it"


def _first_round(counted: Rounds, stitch: str, workshop: Workshop, speech: Speech) -> str:
    chains = f"chain {CORNER_CHAINS}"
    if counted.extra:
        return _along_a_chain(counted, stitch, workshop, speech)
    ring = f"chain {RING_CHAINS} and join them to a ring, or begin in a slip ring"
    if counted.counting is Counting.CLUSTERS:
        clusters = f"{SQUARE_CORNERS} clusters of {CLUSTER} {speech.stitch(stitch)}"
        return f"{ring}; {clusters} in it, {chains} after each"
    count = counted.round(1)
    said = f"{ring}; {speech.number(count.stitches)} {speech.stitch(stitch)} in it"
    if not count.chains:
        return f"{said}{corners_begun(counted, speech)}"
    each = speech.number(count.stitches // SQUARE_CORNERS)
    return f"{said}, {chains} after every {each} of them"


def _along_a_chain(counted: Rounds, stitch: str, workshop: Workshop, speech: Speech) -> str:
    """Return how a rectangle begins: on a chain that it is longer by than it is wide."""
    extra, name = counted.extra, speech.stitch(stitch)
    turning = workshop.turning_chain(stitch).chains
    if counted.counting is Counting.CLUSTERS:
        chain = extra * (CLUSTER + counted.side_chains)
        short, long = "1 cluster", speech.count(extra + 1, "cluster")
        along = (
            f"{speech.count(extra, 'cluster')} of {CLUSTER} {name} along each side of the chain "
            f"and {SQUARE_CORNERS // 2} at each end"
        )
    else:
        chain = extra
        at_an_end = (counted.round(1).stitches - 2 * extra) // 2
        side = at_an_end // 2
        short, long = (f"{speech.number(each)} {name}" for each in (side, side + extra))
        along = (
            f"{speech.number(extra)} {name} along each side of the chain and "
            f"{speech.number(at_an_end)} round each end"
        )
    corners = (
        f", with {CORNER_CHAINS} chains at each of the {SQUARE_CORNERS} corners: {short} between "
        f"two of them on a short side, {long} on a long one"
    )
    return (
        f"chain {speech.number(chain)}, and {speech.number(turning)} to begin with; {along}"
        f"{corners if counted.round(1).chains else ''}"
    )


def _later_round(counted: Rounds, stitch: str, speech: Speech) -> str:
    name = speech.stitch(stitch)
    match counted.counting:
        case Counting.CLUSTERS:
            between = f"chain {counted.side_chains}" if counted.side_chains else "no chain"
            pair = f"{CLUSTER} {name}, {speech.stitch(Stitch.CH)} {CORNER_CHAINS}, {CLUSTER} {name}"
            return (
                f"({pair}) in each corner space, {CLUSTER} {name} in each space along the sides, "
                f"{between} between two clusters"
            )
        case Counting.CIRCLE:
            return spread_words(counted, name, speech)
        case _:
            each = counted.growth // counted.corners
            corner = corner_words(_corner(counted, each), stitch, speech)
            if counted.counting is not Counting.HEXAGON:
                return f"one {name} in each stitch, {corner}"
            between = f"one {name} in each stitch between two corners"
            return f"{between}, {corner}; {corner_goes_on(counted)}"


def _corner(counted: Rounds, each: int) -> CornerWork:
    """Return what is worked at a corner so that there are so many more at each of them."""
    if not counted.round(1).chains:
        return CornerWork(into=Into.STITCH, before=each + 1)
    before = -(-each // 2)
    return CornerWork(into=Into.SPACE, before=before, chains=CORNER_CHAINS, after=each - before)
