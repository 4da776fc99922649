"""What fees take, as expressions: each base by how much of price, delivery and added tax is in it.

A fee's base is a word that may be changed in its cell, so every expression asks for every base.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from exports.sale_formulas.term_cells import TermRefs
from exports.sheets.cells import Ref, Span, rounded
from quoting.core.workshop.selling import FeeBase, TaxShown

Part = Ref | str
"""A cell, or an expression that stands for one."""


def added_of(terms: TermRefs, tax: Part) -> str:
    """Return how much of a tax is added to price and delivery: all of it, or none."""
    return f'IF({terms.shown}="{TaxShown.ADDED.value}",{tax},0)'


def rates_of(terms: TermRefs, share: Callable[[FeeBase], int]) -> str:
    """Return the summed rates of the fees, each by the share that something has in its base."""
    fees = terms.fees
    sums = ((share(base), f'SUMIF({fees.on},"{base.value}",{fees.rate})') for base in FeeBase)
    return _weighed(sums)


def base_of(on: str, terms: TermRefs, price: Part, tax: Part, digits: int) -> str:
    """Return the amount that a fee takes its rate of, whose base is named in the cell `on`."""
    amounts = _amounts(terms, price, tax, digits)
    return "+".join(f"{_is(base, on)}*{amount}" for base, amount in amounts.items())


def fees_of(terms: TermRefs, payments: Part, price: Part, tax: Part, digits: int) -> str:
    """Return what all fees take: each rate and each fixed part rounded once, then added."""
    on, rates, fixed = terms.fees.on, terms.fees.rate, terms.fees.fixed
    amounts = _amounts(terms, price, tax, digits)
    parts = [
        f"{_is(base, on)}*{rounded(f'{rates}*{amount}', digits)}"
        for base, amount in amounts.items()
    ]
    parts.append(rounded(f"{fixed}*{payments}", digits))
    return f"SUMPRODUCT({'+'.join(parts)})"


def _amounts(terms: TermRefs, price: Part, tax: Part, digits: int) -> dict[FeeBase, str]:
    """Return the amount of every base: a sum of cents is rounded to be one of cents."""
    added = added_of(terms, tax)
    return {
        base: rounded(
            _weighed(
                (
                    (base.of_price, price),
                    (base.of_delivery, terms.delivery),
                    (base.of_added_tax, added),
                )
            ),
            digits,
        )
        for base in FeeBase
    }


def _is(base: FeeBase, cells: Span | str) -> str:
    """Return one where a cell, or each cell of a span, names a base, and else nothing."""
    return f'({cells}="{base.value}")'


def _weighed(parts: Iterable[tuple[int, Part]]) -> str:
    """Return the sum of parts, each as many times as it counts; nothing, where none does."""
    said = (part if count == 1 else f"{count}*{part}" for count, part in parts if count)
    return "+".join(map(str, said)) or "0"
