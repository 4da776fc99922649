"""An offer has every amount, fact and caution that the buyer is told, and no other."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quoting.core.ground.cautions import Reader
from quoting.core.ground.measures import Units
from quoting.core.order.design import ColourSource
from quoting.core.order.order import Extra, Terms
from quoting.core.quote.offer import Offer, OfferedColour, OfferedYarn, offer_of
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Delivery, Deposit, Target, Tax, TaxShown
from quoting.core.workshop.stitches import Vocabulary
from tests.core.priced_orders import PRICING, money, quoted
from tests.examples import (
    TODAY,
    WOOL,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

EURO = ExchangeRate(currency="EUR", rate=money("1.17"), day=TODAY)
AT_200 = Terms(target=Target(given=money("200")))
THIRD = replace(PRICING, deposit=Deposit(share=0.3))


def offered(*, pays_in: str | None = None, quantity: int = 1, **changes: object) -> Offer:
    """Return the offer of the cot blanket at 200 and 5 to send."""
    order = sample_order(terms=AT_200, pays_in=pays_in, quantity=quantity)
    shop = sample_workshop(exchange={"EUR": EURO}, **changes)
    return offer_of(sample_quote(order, shop))


def told(offer: Offer) -> list[tuple[str, Decimal]]:
    """Return what each row is and its amount."""
    return [(row.code.value, row.amount) for row in offer.rows]


def test_who_what_and_when_are_those_of_the_quote() -> None:
    quote = sample_quote()
    offer = offer_of(quote)
    assert (offer.maker, offer.buyer) == ("Ottermoor Blankets", "Rosalind Quill")
    assert (offer.title, offer.number) == (quote.order.title, quote.number)
    assert (offer.day, offer.valid_until) == (TODAY, date(2026, 12, 16))
    assert (offer.ready_by, offer.wanted_by) == (quote.ready_by, date(2027, 3, 20))
    assert (offer.stitch, offer.quantity, offer.deliver_to) == ("hdc", 1, "GB")
    assert (offer.width_cm, offer.height_cm) == (quote.plan.width_cm, quote.plan.height_cm)
    assert offer.yarns == (OfferedYarn(name=WOOL, fibre="100 % wool"),)
    assert offer.extras == ("Gift box",)


def test_it_is_written_in_the_words_and_units_of_the_workshop_that_gave_it() -> None:
    shop = sample_workshop(locale="en_US", currency="USD", units=Units.INCHES, speaks=Vocabulary.UK)
    offer = offer_of(sample_quote(None, shop))
    told_in = offer.locale, offer.currency, offer.units, offer.speaks
    assert told_in == ("en_US", "USD", Units.INCHES, Vocabulary.UK)
    assert {row.currency for row in offer.rows} == {"USD"}


def test_a_weight_is_that_of_one_blanket_of_several() -> None:
    one, three = (offer_of(quoted(quantity=quantity)) for quantity in (1, 3))
    assert three.weight_g == pytest.approx(one.weight_g, rel=0.01)


def test_a_colour_bears_its_own_name_and_that_of_its_yarn() -> None:
    other = sample_yarn(name="fell dk", fibre="", colours={"heather": "#7a5c8e"}, stock=())
    design = sample_design(
        sections=(section("sky", "oat", repeats=20),),
        first_rows=(),
        colours={"sky": ColourSource(yarn="fell dk", colour="heather")},
    )
    shop = sample_workshop(yarns=(sample_yarn(), other))
    offer = offer_of(sample_quote(sample_order(design=design), shop))
    assert offer.colours == (
        OfferedColour(name="sky", yarn="fell dk", colour="heather", code="#7a5c8e"),
        OfferedColour(name="oat", yarn=WOOL, colour="oat", code="#d9c9a3"),
    )
    assert {yarn.name: yarn.fibre for yarn in offer.yarns} == {"fell dk": "", WOOL: "100 % wool"}


def test_the_colour_of_an_extra_alone_is_none_of_the_blankets() -> None:
    fringe = Extra(what="Fringe", colour="plum", yarn_m=20.0)
    offer = offer_of(sample_quote(sample_order(extras=(fringe,))))
    assert {colour.name for colour in offer.colours} == {"oat", "teal", "rust"}


def test_only_what_the_buyer_should_hear_is_told_her() -> None:
    quote = sample_quote()
    assert {caution.reader for caution in quote.cautions} == set(Reader)
    (caution,) = offer_of(quote).cautions
    assert (caution.code, caution.facts["advised_in"]) == ("baby-loose-bedding", "GB")


def test_a_price_with_a_third_in_advance_by_hand() -> None:
    """200 and 5 of delivery; three tenths of 205 are 61.50, and 143.50 are left."""
    offer = offered(pricing=THIRD)
    assert told(offer) == [
        ("blankets", money("200")),
        ("delivery", money("5")),
        ("total", money("205")),
        ("deposit", money("61.50")),
        ("balance", money("143.50")),
    ]
    due = {row.code: row.due for row in offer.rows if row.due}
    assert due == {RowCode.DEPOSIT: Due.ON_ACCEPTING, RowCode.BALANCE: Due.BEFORE_SENDING}


def test_in_the_buyers_currency_the_balance_is_what_the_deposit_leaves_of_the_total() -> None:
    """205 × 1.17 is 239.85; 61.50 × 1.17 is 71.955, so 71.96; 167.89 is left."""
    offer = offered(pricing=THIRD, pays_in="EUR")
    assert [(row.code.value, row.amount) for row in offer.rows if row.currency == "EUR"] == [
        ("total", money("239.85")),
        ("deposit", money("71.96")),
        ("balance", money("167.89")),
    ]
    assert offer.exchange == EURO
    total = offer.row(RowCode.TOTAL, "EUR")
    assert total == Row(code=RowCode.TOTAL, amount=money("239.85"), currency="EUR")


def test_all_in_advance_is_one_payment_and_none_in_advance_is_not_said_when() -> None:
    whole = offered(pricing=replace(PRICING, deposit=Deposit(share=1.0)), pays_in="EUR")
    assert [row.code for row in whole.rows if row.due] == [RowCode.WHOLE]
    assert [row.code for row in whole.rows if row.currency == "EUR"] == [RowCode.TOTAL]
    assert whole.waits_for_payment
    later = offered(pricing=PRICING)
    assert not [row for row in later.rows if row.due]
    assert (later.waits_for_payment, later.row(RowCode.DEPOSIT)) == (False, None)


@pytest.mark.parametrize(
    ("shown", "codes", "tax"),
    [
        (TaxShown.INCLUDED, ["total", "tax inside"], "34.17"),
        (TaxShown.ADDED, ["tax added", "total"], "41.00"),
    ],
)
def test_tax_is_added_before_the_total_or_told_after_it_with_its_rate(
    shown: TaxShown, codes: list[str], tax: str
) -> None:
    """A sixth of 205 is inside it, as the VAT fraction of a fifth has it (HMRC); 41 is added."""
    offer = offered(pricing=PRICING, tax=Tax(registered=True, rate=0.2, shown=shown))
    assert [row.code.value for row in offer.rows][2:] == codes
    (row,) = (row for row in offer.rows if row.share is not None)
    assert (row.amount, row.share) == (money(tax), money("0.2"))


def test_a_maker_who_charges_no_tax_names_none() -> None:
    offer = offered(pricing=PRICING, tax=Tax(registered=False, rate=0.2))
    assert not [row for row in offer.rows if row.code.value.startswith("tax")]


def test_of_several_each_has_its_price_and_what_moved_it() -> None:
    terms = Terms(rush=0.1, discount=0.05)
    offer = offer_of(quoted(quantity=3, terms=terms, pricing=replace(PRICING, minimum=money(900))))
    moved = offer.rows[:5]
    assert [row.code.value for row in moved] == [
        "blankets", "rush", "discount", "minimum", "together",
    ]  # fmt: skip
    assert [row.share for row in moved] == [None, money("0.1"), money("0.05"), None, None]
    assert all(row.each is not None and row.amount == 3 * row.each for row in moved)
    assert moved[-1].each == 900
    alone = offer_of(quoted(terms=terms))
    assert {row.each for row in alone.rows} == {None}


@settings(max_examples=40)
@given(
    st.decimals("1", "1000", places=2),
    st.decimals("0", "300", places=2),
    st.one_of(st.none(), st.floats(0.01, 1)),
    st.sampled_from(TaxShown),
    st.sampled_from([None, EURO, replace(EURO, rate=money("0.37"), cushion=0.03)]),
)
def test_the_rows_add_up_whatever_they_are(
    price: Decimal,
    delivery: Decimal,
    share: float | None,
    shown: TaxShown,
    rate: ExchangeRate | None,
) -> None:
    """Total is price, delivery and what tax is added; deposit and balance make up each total."""
    shop = sample_workshop(
        exchange={"EUR": rate} if rate else {},
        tax=Tax(registered=True, rate=0.2, shown=shown),
        delivery=Delivery(charged=delivery),
        pricing=replace(PRICING, deposit=share and Deposit(share=share)),
    )
    terms = Terms(target=Target(given=price))
    order = sample_order(terms=terms, pays_in="EUR" if rate else None)
    quote = sample_quote(order, shop)
    offer = offer_of(quote)
    amounts = {(row.code, row.currency): row.amount for row in offer.rows}
    parts = (RowCode.BLANKETS, RowCode.DELIVERY, RowCode.TAX_ADDED)
    assert sum(amounts.get((code, "GBP"), 0) for code in parts) == amounts[RowCode.TOTAL, "GBP"]
    for money_paid in {row.currency for row in offer.rows}:
        paid = [r.amount for r in offer.rows if r.due and r.currency == money_paid]
        assert sum(paid) in {0, amounts[RowCode.TOTAL, money_paid]}
    assert bool(quote.price.deposit) == offer.waits_for_payment
