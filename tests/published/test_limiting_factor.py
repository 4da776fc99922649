"""Which product first, where the hours are short: against published problems.

Each product is sold whole: its price given, its variable cost as what goes with it, its hours as
work that carries no pay, so that what an hour earns is its contribution.
"""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.hours import Hours, Task
from quoting.core.order.order import Extra, Terms
from quoting.core.plan.gauge import Sureness
from quoting.core.price.price import price_estimate
from quoting.core.weighing.best_size import best_of
from quoting.core.workshop.selling import Delivery, Pay, Pricing, Target
from tests.examples import sample_order, sample_workshop


class Product(NamedTuple):
    """What one sells for, what it costs that varies with it, and the hours it takes."""

    price: str
    variable: str
    hours: str


def earned(product: Product) -> Decimal:
    """Return what the program says that an hour of a product earns."""
    work = Task(
        part=Part.STITCHING,
        what="hdc",
        count=float(product.hours),
        minutes_each=60,
        sureness=Sureness.MEASURED,
        timed_stitch="hdc",
        shared_min=0,
    )
    unpaid = Pay(making_per_hour=Decimal(0), office_per_hour=Decimal(0))
    order = sample_order(
        extras=(Extra(what="Materials", cost=Decimal(product.variable)),),
        terms=Terms(target=Target(given=Decimal(product.price))),
    )
    shop = sample_workshop(
        pay=unpaid, fees=(), delivery=Delivery(), pricing=Pricing(target=Target(margin=0.0))
    )
    estimate = Estimate(colours=(), strands=(), hours=Hours(tasks=(work,)))
    return price_estimate(order, estimate, shop).earned_per_hour


def ranked(*products: Product) -> tuple[list[Decimal], list[int]]:
    """Return what an hour of each product earns, and the products, best first."""
    each = [earned(product) for product in products]
    left, order = dict(enumerate(each)), []
    while left:
        order.append(list(left)[best_of(list(left.values()))])
        del left[order[-1]]
    return each, order


def test_the_wood_carvers_three_products() -> None:
    """Prices 31, 83, 65; variable costs 19, 60, 17; hours 1, 6, 2: 12.00, 3.83, 24.00 an hour.

    Source: wood-carving problem, contribution per unit of the limiting factor, cost accounting
    course text.
    """
    each, order = ranked(
        Product("31", "19", "1"), Product("83", "60", "6"), Product("65", "17", "2")
    )
    assert each == [Decimal("12.00"), Decimal("3.83"), Decimal("24.00")]
    assert order == [2, 0, 1]


def test_the_product_of_the_highest_contribution_need_not_come_first() -> None:
    """Contributions 160, 175, 190 in 1, 1.25 and 0.75 hours: Z, then X, then Y.

    Source: Cambridge International A Level Accounting 9706, paper 13, June 2020, question 26.
    The fixed overhead a piece carries is given there to mislead, and is left out.
    """
    each, order = ranked(
        Product("160", "0", "1"), Product("175", "0", "1.25"), Product("190", "0", "0.75")
    )
    assert each == [Decimal("160.00"), Decimal("140.00"), Decimal("253.33")]
    assert order == [2, 0, 1]


def test_two_kayaks_short_of_labour() -> None:
    """400 in 4 hours and 150 in 1: 100 and 150 an hour, so the one that brings less comes first.

    Source: *Accounting for Managers*, section 6.5, Kayaks (saylordotorg.github.io,
    text_managerial-accounting); the 400 is 4 hours at the 100 that it names.
    """
    each, order = ranked(Product("400", "0", "4"), Product("150", "0", "1"))
    assert each == [Decimal("100.00"), Decimal("150.00")]
    assert order == [1, 0]
