"""A quote's number: the same for the same offer, and another for any other."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.order.order import Extra, Terms
from quoting.core.quote.quote import quote_order
from quoting.core.quote.quote_number import SIGNS
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.selling import Deposit, Pricing, RestDue, Target
from tests.examples import (
    COLOURS,
    TODAY,
    changed_design,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

GIVEN = Terms(target=Target(given=Decimal(200)))
OTHER_ORDERS: Mapping[str, Mapping[str, Any]] = {
    "a note": {"notes": "Leave a long tail"},
    "another buyer": {"buyer": "Rosa Quill"},
    "the day wanted": {"wanted_by": TODAY + timedelta(days=90)},
    "for a baby or not": {"for_baby": not sample_order().for_baby},
    "what comes with it": {"extras": (Extra(what="Card", cost=Decimal("3.20"), minutes=5.0),)},
    "colours exchanged": {"design": sample_design(sections=(section("rust", "teal", "oat"),))},
    "the size asked": {"design": sample_design(width_cm=80.1)},
    "an extra to leave out": {
        "extras": tuple(replace(extra, optional=True) for extra in sample_order().extras)
    },
    "the price": {"terms": Terms(target=Target(given=Decimal(201)))},
}


@pytest.mark.parametrize("changed", OTHER_ORDERS.values(), ids=OTHER_ORDERS.keys())
def test_whatever_differs_in_two_offers_their_numbers_do(changed: Mapping[str, Any]) -> None:
    order = sample_order(terms=GIVEN)
    assert sample_quote(replace(order, **changed)).number != sample_quote(order).number


def test_offers_of_one_total_that_are_paid_or_promised_otherwise_differ() -> None:
    order, shop = sample_order(terms=GIVEN), sample_workshop()
    halves, thirds = (
        replace(shop, pricing=Pricing(target=Target(margin=0.1), deposit=Deposit(share=share)))
        for share in (0.5, 0.3)
    )
    slow = replace(shop, hours_per_week=shop.hours_per_week / 2)
    other_wool = replace(shop, yarns=(sample_yarn(fibre="cotton"),))
    other_words = replace(shop, own_words=OwnWords(terms="Paid in advance."))
    half_way = replace(halves, pricing=replace(halves.pricing, at_half=0.25))
    later = replace(halves, pricing=replace(halves.pricing, rest_due=RestDue.ON_DELIVERY))
    shops = (shop, halves, thirds, half_way, later, slow, other_wool, other_words)
    numbers = [sample_quote(order, each).number for each in shops]
    assert len(set(numbers)) == len(numbers)


def test_sixty_titles_have_sixty_numbers() -> None:
    quote = sample_quote()
    numbers = {
        quote_order(replace(quote.order, title=f"Blanket {n}"), quote.workshop, today=TODAY).number
        for n in range(60)
    }
    assert len(numbers) == 60


def test_what_is_written_otherwise_but_means_the_same_keeps_the_number() -> None:
    order = sample_order(terms=GIVEN, pays_in="GBP")
    (stripes,) = order.design.body.sections
    shared = changed_design(order.design, sections=(replace(stripes, share=2.5),))
    turned = dict(reversed(list(order.design.colours.items())))
    again = replace(
        order,
        design=replace(shared, colours=turned),
        terms=Terms(target=Target(given=Decimal("200.00"))),
        pays_in=None,
    )
    wools = sample_yarn(colours=dict(reversed(list(COLOURS.items()))))
    shop = sample_workshop(yarns=(wools,))
    assert sample_quote(again, shop).number == sample_quote(order).number


def test_a_number_is_its_day_and_eight_signs_to_be_read_out() -> None:
    number = sample_quote().number
    assert re.fullmatch(rf"2026-1125-[{SIGNS}]{{4}}-[{SIGNS}]{{4}}", number)
    tomorrow = quote_order(sample_order(), sample_workshop(), today=date(2026, 11, 26))
    assert tomorrow.number.startswith("2026-1126-")
    assert not set("0O1ILUAE") & set(SIGNS)
