"""How much wider than measured the ranges are told, in words."""

from __future__ import annotations

from quoting.core.workshop.ranges import Ranges
from quoting.wording.speech import Speech

FACTOR_DIGITS = 2


def ranges_words(ranges: Ranges, speech: Speech) -> str:
    """Return how wide a workshop has its ranges told."""
    if ranges == Ranges():
        return "as wide as measured"
    hours, yarn = (speech.trimmed(each, FACTOR_DIGITS) for each in (ranges.hours, ranges.yarn))
    return f"{hours} times as wide as measured for hours, {yarn} times for yarn"


def hours_widened_words(factor: float, speech: Speech) -> str:
    """Return what is said beside a range of hours that is wider than measured; else nothing."""
    return _said(
        "The range is {} times as wide as measured, as your workshop has it.", factor, speech
    )


def yarn_widened_words(factor: float, speech: Speech) -> str:
    """Return what is said of a reserve for yarn that is wider off than measured; else nothing."""
    said = "All of it is taken to be {} times as far off as measured, as your workshop has it."
    return _said(said, factor, speech)


def _said(sentence: str, factor: float, speech: Speech) -> str:
    return "" if factor == 1 else sentence.format(speech.trimmed(factor, FACTOR_DIGITS))
