"""What a workbook says of itself: what follows a change, and where its arithmetic comes from.

And what it says where there is no answer.
"""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.estimate.pace import FEW_SESSIONS, ONE_TIMING_LIMITS
from quoting.core.workshop.stitches import TIME_RATIO, WORKED, Stitch
from quoting.wording.speech import Speech

NO_PRICE = "No price can meet this: fees, tax and target take all of it."
NO_PRICE_OF_SIZE = "no price meets the target"
NO_SIZE_NAMED = "none is named: at a target every size pays about the same"
"""These stand in formulas, so no double quote may be in them."""

QUOTE_FOLLOWS = (
    "Change a boxed figure and everything that rests on it follows: pay, prices of balls, minutes, "
    "fees, tax, target, rounding. Money is rounded half up to the currency's own decimals (ISO "
    "4217), hours to two decimals and grams to whole ones before they meet money.",
    "Rows, stitches, ends, carries and the choice of balls are the program's own: they stay as "
    "they are. Where a change would make the program count anew, the line says so, and so does the "
    "top of every sheet, until you ask for a new quote.",
    "A line of a list can be copied, filled in, put between others or taken out: sums go by the "
    "words of the lines. Two or three lines wait for further extras, fees and timings.",
    "What was quoted stands beside what follows your changes; the actuals are for what it really "
    "took.",
    "The price is solved in one step, from costs, fees, tax and target, so that no cell has to "
    "look at itself.",
)

COMPARISON_FOLLOWS = (
    "Change a boxed figure and everything that rests on it follows: prices of balls, pace and "
    "minutes, pay, delivery, fees, tax, target, rounding, and the range of the hours. Money is "
    "rounded half up to the currency's own decimals (ISO 4217).",
    "To try prices of your own, choose given price on the sheet of terms, then type them on the "
    "sheet of sizes: the size that pays best for an hour is named.",
    "Stitches, rows, ends, joins, balls, weights and yarn left are counted, and stay. Where a "
    "change would make the program count anew, the line says so, and so does the top of every "
    "sheet: when one ball's price moves apart from the others of its yarn, other balls may cost "
    "less.",
    "Shares by which minutes may be off are those of your timings: they stay, and follow the "
    "minutes. What delivery is paid and charged was chosen by the weight counted.",
)

_PRICE_SOURCES = (
    "Margin is profit over the net price, markup is profit over the costs: m = k/(1 + k) "
    "(textbook).",
    "Tax inside a price is price × rate/(1 + rate), rounded half up (HMRC, VAT guide, Notice 700, "
    "and VATREC12030; Regulation (EC) 1103/97, article 5).",
    "What fees take of a price is found from the sum of their rates (HMRC, PAYE72028, grossing "
    "up).",
)

COMPARISON_SOURCES = (
    *_PRICE_SOURCES,
    "The best size earns most for an hour, as the hours are what a maker has too few of: "
    "contribution for each unit of the limiting factor (cost accounting, textbook).",
    "Three times the materials, by area and by ball are the trade's rules of thumb (common "
    "practice). By area and by ball carry over the price of the order's own size, or each "
    "size's own where that cannot be made.",
)


def quote_sources(speech: Speech) -> Iterator[str]:
    """Yield where the arithmetic of a quote's workbook comes from."""
    yield from _PRICE_SOURCES
    off = speech.percent(ONE_TIMING_LIMITS)
    yield (
        f"The range of the hours: what was timed once may be {off} off; from {FEW_SESSIONS} "
        "timings up it is the prediction of a total after Hahn and Meeker, 19 times in 20; between "
        "them the narrower of the two, of which that is not promised. Ranges of different timings "
        "add in squares, those that rest on one timing or one guess add up."
    )
    chain, *others = (speech.trimmed(TIME_RATIO[stitch], 1) for stitch in (Stitch.CH, *WORKED))
    yield (
        f"A stitch that was never timed takes its time from its yarn-overs: chain {chain}, then "
        f"{', '.join(others)} for single, half double, double, treble (common practice, US names)."
    )
    yield (
        "The reserve of yarn follows from how well the yarn of a stitch is known (JCGM 100, "
        "combining of uncertainties), from tension, and from the length on the label."
    )
    yield (
        "Balls are the cheapest whole ones that are enough, two tails allowed for each ball "
        "after the first; then least left over, then fewest balls."
    )
    yield (
        "A colour is carried up the side when it waits at the edge where its next row begins, "
        "within the carrying limits of the workshop (common practice)."
    )
