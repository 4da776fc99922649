"""An offer that is kept as a record comes back as the offer that it was, to the last digit."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from decimal import Decimal
from types import MappingProxyType
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.cautions import Caution
from quoting.core.ground.errors import Refused
from quoting.core.order.order import Extra, Terms
from quoting.core.quote.left_out import LeftOut
from quoting.core.quote.offer import Offer, OfferedColour, OfferedYarn, offer_of
from quoting.core.quote.offer_rows import Row
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import Deposit, RestDue, Tax, TaxShown
from quoting.schema.offer_shape import offer_record, read_offer
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop

PRICING = sample_workshop().pricing
EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.03)


def kept(offer: Offer) -> Offer:
    """Return an offer written as JSON and read again."""
    return read_offer(json.loads(json.dumps(offer_record(offer))))


QUOTES: dict[str, Quote] = {
    "plain": sample_quote(),
    "of several, moved and taxed": sample_quote(
        sample_order(quantity=3, terms=Terms(rush=0.1, discount=0.05)),
        sample_workshop(tax=Tax(registered=True, rate=0.075, shown=TaxShown.ADDED)),
    ),
    "abroad": sample_quote(
        sample_order(pays_in="EUR"),
        sample_workshop(
            exchange={"EUR": EURO}, pricing=replace(PRICING, deposit=Deposit(share=0.3))
        ),
    ),
    "in her own words": sample_quote(
        sample_order(),
        sample_workshop(own_words=OwnWords(address="Otter Lane\nOttermoor", terms="In advance.")),
    ),
    "with what may be left out, in three payments": sample_quote(
        sample_order(extras=(Extra(what="Initials", minutes=45, optional=True),)),
        sample_workshop(
            pricing=replace(PRICING, at_half=0.2, rest_due=RestDue.ON_DELIVERY),
        ),
    ),
    "for nobody and no day": sample_quote(
        sample_order(buyer="", wanted_by=None, deliver_to=None, extras=())
    ),
}


@pytest.mark.parametrize("quote", QUOTES.values(), ids=QUOTES.keys())
def test_the_offer_of_a_quote_comes_back_the_same(quote: Quote) -> None:
    offer = offer_of(quote)
    assert kept(offer) == offer


DECIMALS = st.decimals(min_value=-(10**9), max_value=10**9, places=2)
FLOATS = st.floats(0, 1e6)
TEXTS = st.text(max_size=20)
FACTS = st.one_of(
    st.none(),
    TEXTS,
    st.integers(-(10**9), 10**9),
    FLOATS,
    DECIMALS,
    st.dates(),
    st.lists(TEXTS, max_size=3).map(tuple),
    st.lists(st.integers(0, 99), max_size=3).map(tuple),
)
RATES = st.builds(
    ExchangeRate,
    currency=st.sampled_from(["EUR", "JPY", "KWD"]),
    rate=st.decimals("0.0001", "1000", places=4),
    per=st.decimals("0.01", "1000", places=2),
    day=st.dates(),
    cushion=st.floats(0, 1),
)
CAUTIONS = st.builds(
    Caution, facts=st.dictionaries(st.from_regex(r"[a-z_]+", fullmatch=True), FACTS)
)
PARTS: dict[str, st.SearchStrategy[Any]] = {
    "rows": st.builds(Row, amount=DECIMALS, each=st.none() | DECIMALS, share=st.none() | DECIMALS),
    "yarns": st.builds(OfferedYarn),
    "colours": st.builds(OfferedColour),
    "cautions": CAUTIONS,
    "extras": TEXTS,
    "left_out": st.builds(LeftOut, what=TEXTS, less=DECIMALS),
}
OFFERS = st.builds(
    Offer,
    quantity=st.integers(1, 1000),
    width_cm=FLOATS,
    height_cm=FLOATS,
    weight_g=FLOATS,
    exchange=st.none() | RATES,
    **{name: st.lists(part, max_size=3).map(tuple) for name, part in PARTS.items()},
)


@given(OFFERS)
def test_any_offer_at_all_comes_back_the_same(offer: Offer) -> None:
    assert kept(offer) == offer


def test_what_a_caution_knows_comes_back_as_what_it_was() -> None:
    facts: dict[str, Any] = {
        "price": Decimal("12.50"),
        "day": date(2026, 11, 25),
        "stitches": ("hdc", "sc"),
        "ends": 41,
        "ratio": 1.5,
        "country": "GB",
        "advised_in": None,
    }
    caution = Caution("late", facts=MappingProxyType(facts))
    (back,) = kept(replace(offer_of(QUOTES["plain"]), cautions=(caution,))).cautions
    assert back.facts == facts
    assert [type(fact) for fact in back.facts.values()] == [type(f) for f in facts.values()]


def test_a_record_of_before_anything_could_be_left_out_is_read() -> None:
    offer = offer_of(QUOTES["plain"])
    record = offer_record(offer)
    record.pop("left_out", None)
    assert read_offer(record) == offer


def spoiled(**changes: object) -> list[tuple[str, str]]:
    """Return what is found wrong in a record with these keys replaced."""
    with pytest.raises(Refused) as refusal:
        read_offer(offer_record(offer_of(QUOTES["plain"])) | changes)
    return [(mistake.path, mistake.code) for mistake in refusal.value.mistakes]


def test_every_mistake_of_a_record_is_told_at_its_place() -> None:
    row = {"code": "total", "amount": "12.x", "currency": "GBP"}
    found = spoiled(rows=[row | {"amount": "12.00"}, row, row | {"code": "sum"}], day="soon")
    assert [place for place, _ in found] == ["day", "rows.2.amount", "rows.3.code", "rows.3.amount"]


@pytest.mark.parametrize("fact", [True, [1, "a"], [True], {"hour": "12"}, {"decimal": 1}])
def test_what_is_no_fact_is_refused(fact: object) -> None:
    caution = {"code": "late", "reader": "buyer", "facts": {"what": fact}}
    ((place, code),) = spoiled(cautions=[caution])
    assert place.startswith("cautions.1.facts.what")
    assert code == "wrong-type"


def test_an_offer_that_was_kept_without_words_of_her_own_has_none() -> None:
    record = offer_record(offer_of(QUOTES["plain"]))
    del record["own_words"]
    assert read_offer(record) == offer_of(QUOTES["plain"])


def test_an_offer_that_was_kept_before_squares_were_told_as_open_or_solid_tells_neither() -> None:
    offer = replace(offer_of(QUOTES["plain"]), centre=Counting.CLUSTERS, spaces=True)
    record = offer_record(offer)
    assert record.pop("spaces") is True
    assert read_offer(record) == replace(offer, spaces=None)
