"""What is said of ends, by what becomes of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from quoting.core.order.design import EndsBecome
from quoting.core.quote.fate_of_ends import main_fate, woven_besides
from quoting.core.quote.quote import Quote
from quoting.wording.speech import Speech


@dataclass(frozen=True, slots=True, kw_only=True)
class FateWords:
    """The words of what becomes of ends.

    `done` is what was done with them (`12 ends worked over`), `doing` what the work on them is
    called, `to_do` what is to become of them (`12 ends to work over`), `briefly` the name of their
    number where there is little room. `told` is how they are treated, for the guide: nothing of
    what every maker knows.
    """

    done: str
    doing: str
    to_do: str
    briefly: str
    told: str = ""


FATES: Mapping[EndsBecome, FateWords] = {
    EndsBecome.WOVEN_IN: FateWords(
        done="woven in",
        doing="Weaving in ends",
        to_do="to weave in",
        briefly="Ends to weave",
    ),
    EndsBecome.WORKED_OVER: FateWords(
        done="worked over",
        doing="Working over ends",
        to_do="to work over",
        briefly="Ends to work over",
        told="Lay each end along the top of the stitches, and work the next ones over it.",
    ),
    EndsBecome.ENCLOSED: FateWords(
        done="enclosed",
        doing="Enclosing ends",
        to_do="to enclose in the border",
        briefly="Ends to enclose",
        told=(
            "Leave the ends at the edges: the first border round is worked over them, and the "
            "rounds after it close over them. Weave in those that lie within."
        ),
    ),
    EndsBecome.FRINGE: FateWords(
        done="left as fringe",
        doing="Knotting the fringe",
        to_do="to leave as fringe",
        briefly="Ends for the fringe",
        told=(
            "Leave the ends at the edges hanging, in tails of {tail}, and knot them into a fringe. "
            "Weave in those that lie within."
        ),
    ),
}
"""The words of each."""


def ends_briefly(quote: Quote) -> str:
    """Return what the number of an order's ends is called, where there is little room."""
    return "Ends" if _others(quote) else FATES[main_fate(quote)].briefly


def ends_to_do(quote: Quote, speech: Speech) -> str:
    """Return what is to become of the ends: `to weave in, but for 4 to leave as fringe`."""
    return f"{FATES[main_fate(quote)].to_do}{but_for_words(quote, speech)}"


def ends_of_all(quotes: Iterable[Quote]) -> str:
    """Return the heading of several numbers of ends: `ends to weave in`, if all of them are."""
    fates = {None if _others(quote) else FATES[main_fate(quote)].to_do for quote in quotes}
    only = fates.pop() if len(fates) == 1 else None
    return f"ends {only}" if only else "ends"


def but_for_words(quote: Quote, speech: Speech) -> str:
    """Return what becomes of the fewer ends: `, but for 4 to leave as fringe`, if there are any."""
    others = _others(quote)
    if not others:
        return ""
    woven = main_fate(quote) is EndsBecome.WOVEN_IN
    other = quote.order.design.ends if woven else EndsBecome.WOVEN_IN
    return f", but for {speech.number(others)} {FATES[other].to_do}"


def _others(quote: Quote) -> int:
    within = woven_besides(quote)
    return min(within, quote.estimate.ends - within)
