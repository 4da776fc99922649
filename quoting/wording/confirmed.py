"""Sums shown with so many decimals that a calculator, fed with what is shown, comes to the same."""

from __future__ import annotations

from collections.abc import Callable

MOST_DIGITS = 10


def confirming_digits(least: int, confirms: Callable[[int], bool]) -> int:
    """Return the fewest decimals, from `least` up, with which a sum's operands give its result.

    `least` where none do, because more went into the result than is shown.
    """
    return next((d for d in range(least, MOST_DIGITS + 1) if confirms(d)), least)
