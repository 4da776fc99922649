"""The bank's answer is one day of rates, and is refused whenever anything is odd."""

from __future__ import annotations

from decimal import Decimal

import pytest
import responses
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Mistake, Refused
from quoting.rates import read_rates
from tests.paths import place_of
from tests.rates.bank_answers import document, why

ENTITIES = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 10))
BOMB = f'<!DOCTYPE Envelope [<!ENTITY e0 "0123456789">{ENTITIES}]>'


@pytest.mark.parametrize(
    "content",
    [
        document(before=BOMB, rates={"USD": "1.0556&e9;"}),
        document(before=BOMB),
        document(before='<!DOCTYPE Envelope [<!ENTITY rate "1.0556">]>', rates={"USD": "&rate;"}),
        document(before='<!DOCTYPE Envelope SYSTEM "http://127.0.0.1:9/eurofxref.dtd">'),
        document(before='<!DOCTYPE x [<!ENTITY own SYSTEM "file:///etc/hostname">]>'),
        document(before="<!DOCTYPE Envelope>"),
    ],
    ids=["entity bomb", "bomb unused", "entity", "outside DTD", "outside file", "bare DTD"],
)
def test_a_document_type_definition_is_refused_and_never_followed(
    bank: responses.RequestsMock, content: bytes
) -> None:
    assert why(lambda: read_rates(content)).code == "not-rates"
    assert len(bank.calls) == 0


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"not xml",
        b"<html><body>Down for maintenance</body></html>",
        document()[:-20],
        document().replace(b"UTF-8", b"no-such-encoding"),
        document().replace(b"eurofxref", b"another"),
        document(rates={}),
        document(rates={"USD": "many"}),
        document(rates={"USD": "0"}),
        document(rates={"USD": "-1.05"}),
        document(rates={"USD": "NaN"}),
        document(rates={"USD": "sNaN"}),
        document(rates={"USD": "Infinity"}),
        document(rates={"USD": "1E-999999"}),
        document(rates={"USD": "1E+999999"}),
        document(rates={"USD": "0.0009"}),
        document(rates={"USD": "1000001"}),
        document(rates={"USD": ""}),
        document(day="yesterday"),
        document(day=""),
        document(more='<Cube time="2017-03-07"><Cube currency="USD" rate="1.0576"/></Cube>'),
        document(rates={"ATS": "13.7603"}),
        b"<a>" * 30_000,
        b"<a>" * 14_000 + b"</a>" * 14_000,
        b"\xff\xfe" + document(),
        b"\x00" * 50,
    ],
    ids=lambda content: repr(content[:8]) + str(len(content)),
)
def test_anything_but_one_day_of_rates_is_refused(content: bytes) -> None:
    assert why(lambda: read_rates(content)) == Mistake(place_of("rates"), "not-rates")


@given(st.binary(max_size=300))
def test_no_bytes_do_worse_than_be_refused(content: bytes) -> None:
    assert why(lambda: read_rates(content)).code == "not-rates"


@given(st.integers(0, len(document()) - 1), st.binary(min_size=1, max_size=3))
def test_a_damaged_document_is_read_or_refused(at: int, damage: bytes) -> None:
    whole = document()
    damaged = whole[:at] + damage + whole[at + len(damage) :]
    try:
        rates = read_rates(damaged).rates
    except Refused:
        assert why(lambda: read_rates(damaged)).code == "not-rates"
    else:
        assert min(rates.values()) > 0


def test_the_dearest_and_the_cheapest_currency_that_are_read_have_a_cross_rate() -> None:
    read = read_rates(document(rates={"USD": "0.001", "JPY": "1000000"}))
    assert read.between("USD", "JPY").for_one == 10**9
    assert read.between("JPY", "USD").for_one > 0


def test_a_currency_that_is_none_any_more_is_left_out() -> None:
    read = read_rates(document(rates={"USD": "1.0556", "ATS": "13.7603"}))
    assert read.rates == {"USD": Decimal("1.0556")}
