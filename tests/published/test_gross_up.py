"""From what must be kept to what must be asked: against published worked examples."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.money import round_money
from quoting.core.price.price_equation import equation_of, solve_price
from quoting.core.price.sale import Sale, fee_parts
from quoting.core.workshop.selling import Fee, Target, Tax


def sale(cost: str, *rates: float) -> Sale:
    """Return a sale of a cost, of which so many shares are kept by others."""
    return Sale(
        cost=Decimal(cost),
        delivery=Decimal(0),
        tax=Tax(),
        fees=tuple(Fee(name=str(number), rate=rate) for number, rate in enumerate(rates)),
        payments=1,
        currency="GBP",
    )


def price(of: Sale, target: Target = Target(margin=0.0)) -> Decimal:  # noqa: B008 - it is frozen
    return round_money(solve_price(equation_of(of, target)), "GBP")


def test_two_rates_of_one_amount_are_summed_before_the_division() -> None:
    """158.76 kept, 20 % and 8 % taken: 220.50.

    Source: HMRC internal manual, PAYE72028, how to gross-up.
    """
    assert price(sale("158.76", 0.20, 0.08)) == Decimal("220.50")


@pytest.mark.parametrize(
    ("kept", "rate", "asked"),
    [("8000", 0.20, "10000.00"), ("4000", 0.40, "6666.67"), ("4500", 0.45, "8181.82")],
)
def test_one_rate(kept: str, rate: float, asked: str) -> None:
    """Source: HMRC internal manual, PSA1170."""
    assert price(sale(kept, rate)) == Decimal(asked)


def test_pay_of_which_two_contributions_are_taken() -> None:
    """500 / 0.9235 is 541.42: 6.2 % and 1.45 % are taken of it.

    Source: Internal Revenue Service, Publication 15-A, employee's portion of taxes paid by the
    employer, example (from memory).
    """
    assert price(sale("500", 0.062, 0.0145)) == Decimal("541.42")


@pytest.mark.parametrize(
    ("kept", "rates"),
    [("158.76", (0.20, 0.08)), ("8000", (0.20,)), ("4000", (0.40,)), ("4500", (0.45,))],
)
def test_what_is_taken_leaves_what_must_be_kept(kept: str, rates: tuple[float, ...]) -> None:
    """The same examples, read backwards."""
    of = sale(kept, *rates)
    asked = price(of)
    taken = sum(line.amount for line in fee_parts(of, asked, Decimal(0), 1))
    assert abs(asked - taken - Decimal(kept)) <= Decimal("0.01")


@pytest.mark.parametrize(("cost", "markup", "asked"), [("40", 0.50, "60.00")])
def test_a_markup_is_of_the_cost(cost: str, markup: float, asked: str) -> None:
    """40 and 50 % of it are 60, of which the profit is a third.

    Source: textbook relation m = k/(1 + k).
    """
    assert price(sale(cost), Target(markup=markup)) == Decimal(asked)
    assert price(sale(cost), Target(margin=1 / 3)) == Decimal(asked)
