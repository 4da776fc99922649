"""What the charts of a workbook show, in sentences, for whoever does not see them.

A chart follows its cells and a sentence does not, so each says that its figures are the first.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal

from quoting.wording.speech import Speech

Named = tuple[str, Decimal]
"""An amount and what it is of."""

SIZES_SAID = 8
"""So many sizes are told one by one."""


def parts_sentence(total: Decimal, parts: Iterable[Named], speech: Speech) -> str:
    """Return what the bars of a price's parts show; a part that takes nothing is left out."""
    said = ", ".join(f"{part} {speech.money(amount)}" for part, amount in parts if amount)
    return (
        f"A bar for each part of the {speech.money(total)} that the buyer pays, as first "
        f"worked out: {said or 'nothing'}."
    )


def sizes_sentence(sizes: Sequence[tuple[str, Sequence[Named]]], speech: Speech) -> str:
    """Return what the stacked columns of some sizes show: the sum of each, and its largest part."""
    said = []
    for size, parts in sizes:
        total = sum((amount for _, amount in parts), Decimal(0))
        part, most = max(parts, key=lambda each: each[1])
        said.append(f"{size} {speech.money(total)}, most of it {part}, {speech.money(most)}")
    return (
        "A column for each size, stacked of the parts that its price pays for, as first "
        f"worked out: {_first_of(said)}."
    )


def earnings_sentence(sizes: Iterable[tuple[str, Decimal, Decimal]], speech: Speech) -> str:
    """Return what the columns of an hour's earnings show; a size, what it earns, and the pay."""
    said = [
        f"{size} {speech.money(earned)} beside {speech.money(pay)}" for size, earned, pay in sizes
    ]
    return (
        "A column for what an hour earns at each size, and a line for the hourly pay, as first "
        f"worked out: {_first_of(said)}."
    )


def _first_of(said: Sequence[str]) -> str:
    left = len(said) - SIZES_SAID
    more = [f"and {left} more"] if left > 0 else []
    return "; ".join([*said[:SIZES_SAID], *more])
