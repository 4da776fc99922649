"""How rows are begun, the first and those after it, as a pattern would have it."""

from __future__ import annotations

from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import TurningChain
from quoting.wording.speech import Speech

_ENDINGS = {1: "st", 2: "nd", 3: "rd"}
_TEENS = (11, 12, 13)


def foundation_words(quote: Quote, speech: Speech) -> str:
    """Return how row 1 is begun: `chain 100, first hdc in the 3rd chain from the hook`.

    The chains skipped are those that turn a row, whether they stand for its first stitch or not
    (common practice). Of a pattern that begins with chains of its own only how many they are.
    """
    plan = quote.plan
    chain = f"chain {speech.number(plan.foundation_chain)}"
    first = first_stitch_words(quote, speech)
    return f"{chain}, {first}" if first else chain


def first_stitch_words(quote: Quote, speech: Speech) -> str:
    """Return where row 1 begins, nothing of a pattern that begins with chains of its own."""
    stitch = quote.plan.rows[0].stitch
    turn = quote.workshop.turning_chain(stitch)
    if turn.begins_with is not None:
        return ""
    return f"first {speech.stitch(stitch)} in the {_ordinal(turn.chains + 1)} chain from the hook"


def chains_words(turn: TurningChain, speech: Speech) -> str:
    """Return what a row or round begins with: `3 chains, which count as its first stitch`."""
    one = turn.chains == 1
    counts = "counts as its first stitch" if one else "count as its first stitch"
    if not turn.counts:
        counts = f"{'does' if one else 'do'} not count as a stitch"
    return f"{speech.count(turn.chains, 'chain')}, which {counts}"


def _ordinal(number: int) -> str:
    ending = "th" if number % 100 in _TEENS else _ENDINGS.get(number % 10, "th")
    return f"{number}{ending}"
