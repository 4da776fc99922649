"""How good quotes were, in sentences: how far off, how often within the range, what would do."""

from __future__ import annotations

from quoting.core.making.bias import Bias
from quoting.core.making.coverage import Coverage
from quoting.core.making.outturn import CONFIDENCE, Outturn
from quoting.core.making.widening import Method, Widening
from quoting.core.workshop.ranges import MOST_WIDENED
from quoting.wording.speech import Speech

AS_QUOTED = "as quoted"
FEW_ORDERS = 5
"""Of fewer than these hardly anything can be said."""

WHOLE, FINE = 0, 1
A_TENTH = 0.0995
"""Decimals of a percentage, from a tenth on none: two figures of it say enough."""

_BY = {
    Method.ORDER_STATISTIC: "as far as these {orders} missed, whatever their spread",
    Method.STUDENT_T: "foretold from {orders} by Student's t, as so few are",
}


def bias_sentences(bias: Bias, what: str, speech: Speech) -> tuple[str, ...]:
    """Return whether hours, or yarn (`what`), were more or less than quoted, and how surely."""
    orders = speech.count(bias.cases, "finished order")
    if bias.low is None or bias.high is None or bias.spread is None:
        took = _of_what(bias.mean, what, speech)
        return (f"{orders} took {took}. One says nothing yet of the next.",)
    limits = _between(bias.low, bias.high, speech)
    said = f"Over {orders} your {what} came to {_off(bias.mean, speech)} ({limits})."
    spread = f"Single orders lie about {_percent(bias.spread, speech)} to either side of that."
    chance = () if bias.is_shown else ("That may be chance: nought lies within these limits.",)
    few = (_few(bias.cases),) if bias.cases < FEW_ORDERS else ()
    return (said, *chance, spread, *few)


def coverage_sentence(coverage: Coverage, what: str, speech: Speech) -> str:
    """Return how often the real figure was within the range, and what that says."""
    limits, meant = coverage.limits, speech.percent(CONFIDENCE, WHOLE)
    held = (
        f"The real {what} lay within the range that you quoted in "
        f"{speech.number(coverage.inside)} of {speech.count(coverage.cases, 'order')}: in the long "
        f"run that may be {_plain(limits.low, speech)} to {_percent(limits.high, speech)} of them"
    )
    if coverage.is_too_narrow:
        return f"{held}, and {meant} is meant. The ranges were too narrow."
    if limits.low > CONFIDENCE:
        return f"{held}. The ranges were wider than the {meant} that is meant."
    return f"{held}, so that the {meant} that is meant may well be true of them."


def widening_sentence(widening: Widening, what: str, speech: Speech) -> str:
    """Return by how much the range would have to be widened, and what that rests on."""
    by = _BY[widening.method].format(orders=speech.count(widening.cases, "order"))
    times = speech.trimmed(widening.factor, 2)
    if widening.factor >= MOST_WIDENED:
        return (
            f"No range of {what} that says anything would have held them: see first what the "
            "timings and swatches rest on."
        )
    if not widening.is_other:
        return f"Your range of {what} is {times} times as wide as measured, which is what they ask."
    return (
        f"To hold 19 times in 20, the range of {what} has to be {times} times as wide as measured "
        f"({by}). {_now(widening.present, speech)}"
    )


def _now(present: float, speech: Speech) -> str:
    if present == 1:
        return "Now it is told as measured."
    return f"Now it is {speech.trimmed(present, 2)} times as wide."


def outturn_words(outturn: Outturn, speech: Speech) -> str:
    """Return how a figure turned out, and whether within its range: `9% more, within`."""
    off = more_or_less(outturn.ratio - 1, speech)
    if outturn.half_width is None:
        return off
    return f"{off}, {'within' if outturn.was_inside else 'outside'}"


def more_or_less(share: float, speech: Speech) -> str:
    """Return a deviation in words: `4% more`, or `as quoted`."""
    said = _percent(abs(share), speech)
    if said == _percent(0.0, speech):
        return AS_QUOTED
    return f"{said} {'more' if share > 0 else 'less'}"


def _off(share: float, speech: Speech) -> str:
    said = more_or_less(share, speech)
    return "what was quoted" if said == AS_QUOTED else f"{said} than quoted"


def _of_what(share: float, what: str, speech: Speech) -> str:
    said = more_or_less(share, speech)
    return f"as much {what} {AS_QUOTED}" if said == AS_QUOTED else f"{said} {what} than quoted"


def _between(low: float, high: float, speech: Speech) -> str:
    """Return two limits, as parts more or less: `4 to 14%`, or `2% less to 8% more`."""
    if low * high < 0:
        return f"{more_or_less(low, speech)} to {more_or_less(high, speech)}"
    near, far = sorted((abs(low), abs(high)))
    digits = _digits(near)
    return f"{speech.trimmed(near * 100, digits)} to {speech.percent(far, digits)}"


def _percent(share: float, speech: Speech) -> str:
    return speech.percent(share, _digits(share))


def _plain(share: float, speech: Speech) -> str:
    """Return a percentage without its sign, as the first of two."""
    return speech.trimmed(share * 100, _digits(share))


def _digits(share: float) -> int:
    return WHOLE if abs(share) >= A_TENTH else FINE


def _few(cases: int) -> str:
    return f"So few orders say little: the next may be quite otherwise than these {cases}."
