"""Which product first, where the hours are short: against published problems."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.best_size import best_of
from quoting.core.money import round_half_up


def ranked(contributions: list[str], hours: list[str]) -> tuple[list[Decimal], list[int]]:
    """Return the contribution of an hour of each product, and the products, best first."""
    earned = [
        round_half_up(Decimal(money) / Decimal(time), 2)
        for money, time in zip(contributions, hours, strict=True)
    ]
    left, order = dict(enumerate(earned)), []
    while left:
        order.append(list(left)[best_of(list(left.values()))])
        del left[order[-1]]
    return earned, order


def test_the_wood_carvers_three_products() -> None:
    """Prices 31, 83, 65; variable costs 19, 60, 17; hours 1, 6, 2.

    Source: wood-carving problem, contribution per unit of the limiting factor, cost accounting
    course text.
    """
    earned, order = ranked(["12", "23", "48"], ["1", "6", "2"])
    assert earned == [Decimal("12.00"), Decimal("3.83"), Decimal("24.00")]
    assert order == [2, 0, 1]


def test_the_product_of_the_highest_contribution_need_not_come_first() -> None:
    """Contributions 160, 175, 190 in 1, 1.25 and 0.75 hours: Z, then X, then Y.

    Source: Cambridge International A Level Accounting 9706, paper 13, June 2020, question 26.
    The fixed overhead a piece carries is given there to mislead, and is left out.
    """
    earned, order = ranked(["160", "175", "190"], ["1", "1.25", "0.75"])
    assert earned == [Decimal("160.00"), Decimal("140.00"), Decimal("253.33")]
    assert order == [2, 0, 1]


def test_three_products_short_of_labour() -> None:
    """Contributions 6, 5, 4 in 1.2, 0.8 and 0.4 hours: 5.00, 6.25, 10.00.

    Source: management accounting course text, chapter 4, products A, B, C (page 90 of the text at
    online.flipbuilder.com/bmcx/vksq).
    """
    earned, order = ranked(["6", "5", "4"], ["1.2", "0.8", "0.4"])
    assert earned == [Decimal("5.00"), Decimal("6.25"), Decimal("10.00")]
    assert order == [2, 1, 0]


@pytest.mark.parametrize(("scarce", "best"), [(("0.75", "0.5"), 1), (("0.5", "0.75"), 0)])
def test_what_is_scarce_decides_and_not_what_a_piece_brings(
    scarce: tuple[str, str], best: int
) -> None:
    """85 and 95 a piece, of 0.75 and 0.5 m² of a scarce cloth: 113.33 and 190.00.

    Source: examination problem, ACCA Performance Management (opentuition.com, forum, July 2021).
    The second case exchanges the amounts.
    """
    earned, order = ranked(["85", "95"], list(scarce))
    assert order[0] == best
    if best:
        assert earned == [Decimal("113.33"), Decimal("190.00")]
