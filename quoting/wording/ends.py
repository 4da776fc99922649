"""What is said of ends, by what becomes of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from quoting.core.order.design import EndsBecome
from quoting.core.quote.fate_of_ends import main_fate, woven_besides
from quoting.core.quote.quote import Quote
from quoting.wording.speech import Speech

ENDS_DONE: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "woven in",
    EndsBecome.WORKED_OVER: "worked over",
    EndsBecome.ENCLOSED: "enclosed",
    EndsBecome.FRINGE: "left as fringe",
}
"""What was done with ends: `12 ends worked over`."""

DOING_ENDS: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "Weaving in ends",
    EndsBecome.WORKED_OVER: "Working over ends",
    EndsBecome.ENCLOSED: "Enclosing ends",
    EndsBecome.FRINGE: "Knotting the fringe",
}
"""What the work on them is called."""

ENDS_TO_DO: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "to weave in",
    EndsBecome.WORKED_OVER: "to work over",
    EndsBecome.ENCLOSED: "to enclose in the border",
    EndsBecome.FRINGE: "to leave as fringe",
}
"""What is to become of them: `12 ends to work over`."""

ENDS_BRIEFLY: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "Ends to weave",
    EndsBecome.WORKED_OVER: "Ends to work over",
    EndsBecome.ENCLOSED: "Ends to enclose",
    EndsBecome.FRINGE: "Ends for the fringe",
}
"""The name of their number, where there is little room."""

ENDS_TOLD: Mapping[EndsBecome, str] = {
    EndsBecome.WOVEN_IN: "",
    EndsBecome.WORKED_OVER: (
        "Lay each end along the top of the stitches, and work the next ones over it."
    ),
    EndsBecome.ENCLOSED: (
        "Leave the ends at the edges: the first border round is worked over them, and the rounds "
        "after it close over them. Weave in those that lie within."
    ),
    EndsBecome.FRINGE: (
        "Leave the ends at the edges hanging, in tails of {tail}, and knot them into a fringe. "
        "Weave in those that lie within."
    ),
}
"""How they are treated, for the guide; nothing of what every maker knows."""


def ends_briefly(quote: Quote) -> str:
    """Return what the number of an order's ends is called, where there is little room."""
    return "Ends" if _others(quote) else ENDS_BRIEFLY[main_fate(quote)]


def ends_to_do(quote: Quote, speech: Speech) -> str:
    """Return what is to become of the ends: `to weave in, but for 4 to leave as fringe`."""
    return f"{ENDS_TO_DO[main_fate(quote)]}{but_for_words(quote, speech)}"


def ends_of_all(quotes: Iterable[Quote]) -> str:
    """Return the heading of several numbers of ends: `ends to weave in`, if all of them are."""
    fates = {None if _others(quote) else ENDS_TO_DO[main_fate(quote)] for quote in quotes}
    only = fates.pop() if len(fates) == 1 else None
    return f"ends {only}" if only else "ends"


def but_for_words(quote: Quote, speech: Speech) -> str:
    """Return what becomes of the fewer ends: `, but for 4 to leave as fringe`, if there are any."""
    others = _others(quote)
    if not others:
        return ""
    woven = main_fate(quote) is EndsBecome.WOVEN_IN
    other = quote.order.design.ends if woven else EndsBecome.WOVEN_IN
    return f", but for {speech.number(others)} {ENDS_TO_DO[other]}"


def _others(quote: Quote) -> int:
    within = woven_besides(quote)
    return min(within, quote.estimate.ends - within)
