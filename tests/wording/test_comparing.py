"""What a comparison says of the size that pays best, or of the price that one keeps."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.order.order import Order, Terms
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import compare_sizes
from quoting.core.workshop.selling import Pay, Target
from quoting.wording import speech_of, verdict
from tests.examples import TODAY, sample_order, sample_workshop

PRAM, COT = (Size(width_cm=w, height_cm=h) for w, h in ((60, 75), (80, 100)))


def said(order: Order | None = None, pay: Pay | None = None, **prices: str) -> str:
    """Return what is said of two sizes, at prices if there are any."""
    shop = sample_workshop(**({"pay": pay} if pay else {}))
    given = {size: Decimal(prices[name]) for name, size in NAMED.items()} if prices else None
    found = compare_sizes(order or sample_order(), shop, (PRAM, COT), today=TODAY, prices=given)
    return verdict(found, speech_of(shop))


NAMED = {"pram": PRAM, "cot": COT}


def test_a_size_whose_office_hours_are_dear_is_judged_by_all_of_its_pay() -> None:
    """At 193 an hour of the cot earns more than making pays, and still 1.72 are missing."""
    finisher = Pay(making_per_hour=Decimal(10), office_per_hour=Decimal(30))
    poor = said(pay=finisher, pram="60", cot="193")
    assert poor.endswith("less than the £11.92 that your own pay comes to: ask more for each size.")


def test_where_another_size_pays_its_hour_more_is_asked_only_of_the_best() -> None:
    """The small blanket is mostly office work, which is paid three times as well."""
    finisher = Pay(making_per_hour=Decimal(5), office_per_hour=Decimal(60))
    half = said(pay=finisher, pram="125", cot="175")
    assert "60x75cm pays best" in half
    assert half.endswith("ask more for it.")


def test_at_a_target_the_price_that_the_order_gives_is_said_to_be_kept() -> None:
    given = sample_order(terms=Terms(target=Target(given=Decimal(185))))
    assert "80x100cm, the order's own size, stands at the price that you gave for it, £185.00" in (
        said(given)
    )
    assert "stands at" not in said()
