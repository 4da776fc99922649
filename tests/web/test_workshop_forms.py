"""The Workshop page's own forms: the day's reference rates, and what an hour must carry."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import NoReturn

import pytest
import responses

from quoting.core.workshop.euro_rates import EuroRates
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.workshop import Workshop
from quoting.rates import ADDRESS, keep_rates, kept_rates
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Page

RATES = {"USD": Decimal("1.0556"), "JPY": Decimal("120.65"), "GBP": Decimal("0.86753")}
DOCUMENT = (
    '<gesmes:Envelope xmlns:gesmes="http://www.gesmes.org/xml/2002-08-01" '
    'xmlns="http://www.ecb.int/vocabulary/2002-08-01/eurofxref"><Cube><Cube time="2026-11-24">'
    + "".join(f'<Cube currency="{code}" rate="{rate}"/>' for code, rate in RATES.items())
    + "</Cube></Cube></gesmes:Envelope>"
)
PAY = {"income": "24000", "overhead": "1900", "weeks": "46", "hours_a_week": "25"}


@pytest.fixture
def bank() -> Iterator[responses.RequestsMock]:
    """Stand in for the network: only what a test adds is answered."""
    with responses.RequestsMock() as mock:
        yield mock


def with_rates(
    day: date | None = None, *, file: Path | None = None, workshop: Workshop | None = None
) -> Maker:
    """Return a maker whose workshop has reference rates of a day, or none."""
    shop = open_shop(workshop or sample_workshop(), today=lambda: TODAY).starting_with(ORDER)
    shop = replace(shop, rates_file=file)
    if day is not None:
        shop = shop.with_rates(EuroRates(day=day, rates=RATES))
    return Maker(create_app(shop).test_client())


def press(maker: Maker, address: str, **typed: str) -> Page:
    """Open the Workshop page and send one of its forms."""
    hidden = maker.open("/workshop").root.all(lambda n: n.attributes.get("name") == "csrf_token")
    sent = {"csrf_token": next(hidden).attributes["value"], **typed}
    reply = maker.client.post(address, data=sent)
    maker.status = reply.status_code
    return Page(reply.text)


def pays_in(page: Page) -> list[str]:
    """Return the currencies that a buyer may pay in."""
    return [option.attributes["value"] for option in page.labelled("Buyer pays in").all("option")]


# -- reference rates ---------------------------------------------------------------------------


def test_fetched_rates_are_kept_and_used_from_then_on(
    bank: responses.RequestsMock, tmp_path: Path
) -> None:
    bank.get(ADDRESS, body=DOCUMENT)
    maker = with_rates(file=tmp_path / "rates.json")
    assert "USD" not in pays_in(maker.open("/"))
    page = press(maker, "/workshop/rates")
    assert "Fetched: the reference rates of 24 November 2026, 3 currencies." in page.root.text
    assert kept_rates(tmp_path / "rates.json") == EuroRates(day=date(2026, 11, 24), rates=RATES)
    assert pays_in(maker.open("/")) == ["", "GBP", "EUR", "USD", "JPY"]


def test_the_rates_in_use_are_shown_with_their_day_and_origin() -> None:
    typed = {"EUR": ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)}
    maker = with_rates(date(2026, 11, 24), workshop=sample_workshop(exchange=typed))
    rows = {row[0]: row[1:] for row in maker.open("/workshop").table("Rate")}
    assert rows["EUR"] == ["1.17 for 1 GBP", "2%", "25 November 2026", "typed"]
    cross = "1.0556 for 0.86753 GBP"
    assert rows["USD"] == [cross, "none", "24 November 2026", "reference rate"]


def test_a_rate_typed_by_hand_stays_when_others_are_fetched(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=DOCUMENT)
    typed = {"USD": ExchangeRate(currency="USD", rate=Decimal("1.3"), day=TODAY)}
    maker = with_rates(date(2026, 11, 2), workshop=sample_workshop(exchange=typed))
    page = press(maker, "/workshop/rates")
    rows = {row[0]: row[1:] for row in page.table("Rate")}
    assert (rows["USD"][0], rows["USD"][-1]) == ("1.3 for 1 GBP", "typed")
    assert rows["JPY"][2] == "24 November 2026"


def test_rates_that_cannot_be_reached_are_told_and_the_old_ones_still_serve() -> None:
    maker = with_rates(date(2026, 11, 24))
    with responses.RequestsMock():
        page = press(maker, "/workshop/rates")
    assert maker.status == 502
    assert "Not done: The reference rates could not be reached" in page.root.text
    assert "USD" in pays_in(maker.open("/"))


@pytest.mark.parametrize(
    ("status", "body", "sentence"),
    [(503, "", "answered with an error, 503"), (200, "<html></html>", "is not the document")],
)
def test_an_answer_that_is_no_rates_is_told(
    bank: responses.RequestsMock, status: int, body: str, sentence: str
) -> None:
    bank.get(ADDRESS, body=body, status=status)
    maker = with_rates()
    assert sentence in press(maker, "/workshop/rates").root.text
    assert pays_in(maker.open("/")) == ["", "GBP"]


def test_rates_that_cannot_be_written_down_serve_all_the_same(
    bank: responses.RequestsMock, tmp_path: Path
) -> None:
    bank.get(ADDRESS, body=DOCUMENT)
    (tmp_path / "file").touch()
    maker = with_rates(file=tmp_path / "file" / "rates.json")
    page = press(maker, "/workshop/rates")
    assert "They serve until the program ends, but could not be kept" in page.root.text
    assert "USD" in pays_in(maker.open("/"))


def test_rates_older_than_a_week_are_said_to_be_old_and_younger_ones_are_not() -> None:
    assert "more than a week old" in with_rates(date(2026, 11, 17)).open("/workshop").root.text
    assert "more than a week old" not in with_rates(date(2026, 11, 18)).open("/workshop").root.text


def test_a_price_at_an_old_rate_says_so_beside_the_price() -> None:
    page = with_rates(date(2026, 11, 2)).send("/answer", order__pays_in="USD")
    sections = {s.attributes["aria-labelledby"]: s.text for s in page.root.all("section")}
    assert "The rate of exchange for USD is of 2 November 2026" in sections["h-price"]


def test_the_quote_names_the_buyers_amount_its_rate_its_day_and_the_cushion() -> None:
    workshop = sample_workshop()
    pricing = replace(workshop.pricing, exchange_cushion=0.02)
    maker = with_rates(date(2026, 11, 24), workshop=replace(workshop, pricing=pricing))
    page = maker.send("/quote", order__pays_in="JPY", price__given="200")
    rows = _offer(page)
    # (200 + 5) x 1.02 x 120.65 / 0.86753 = 29,080.16, by hand
    rate = "120.65 for 0.86753 GBP, the rate of 24 November 2026, and 2% against its moving"
    assert rows[f"Total in JPY, at {rate}"].endswith("¥29,080")
    deposit, balance = (rows[f"{part} in JPY"] for part in ("Deposit", "Balance"))
    assert (deposit, balance) == ("JP¥14,540", "JP¥14,540")


def _offer(page: Page) -> dict[str, str]:
    rows = [
        [c.text for c in row.all(lambda n: n.tag in {"th", "td"})] for row in page.root.all("tr")
    ]
    return {row[0]: row[-1] for row in rows}


def test_with_the_network_cut_every_page_works_but_fetching(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def cut(*_: object, **__: object) -> NoReturn:
        raise OSError("the network is cut")

    keep_rates(EuroRates(day=date(2026, 11, 24), rates=RATES), tmp_path / "rates.json")
    maker = with_rates(date(2026, 11, 24), file=tmp_path / "rates.json")
    monkeypatch.setattr(socket, "socket", cut)
    monkeypatch.setattr(socket, "getaddrinfo", cut)
    for address in ("/", "/blank", "/sizes", "/measurements", "/yarn", "/workshop"):
        maker.open(address)
        assert maker.status == 200
    for address in (
        "/answer",
        "/quote",
        "/calmer",
        "/near",
        "/sizes/of-order",
        "/workbook",
        "/order-file",
    ):
        reply = maker.client.post(address, data=maker.open().typed() | {"order.pays_in": "JPY"})
        assert reply.status_code == 200
    press(maker, "/workshop/rates")
    assert maker.status == 502


# -- an hour -------------------------------------------------------------------------------------


def test_a_year_becomes_an_hour_with_the_working_shown(maker: Maker) -> None:
    text = press(maker, "/workshop/pay", **PAY).with_id("pay").text
    assert "46 weeks × 25 h = 1,150 h" in text
    assert "£24,000.00 / 1,150 h = £20.87" in text
    assert "£1,900.00 / 1,150 h = £1.65" in text


def test_the_lines_for_the_workshop_file_stand_ready_to_paste(maker: Maker) -> None:
    (lines,) = press(maker, "/workshop/pay", **PAY).root.all("pre")
    assert lines.text == 'making_per_hour = "20.87" overhead_per_hour = "1.65"'


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("income", "", "This is missing"),
        ("income", "plenty", "cannot be read as a number"),
        ("overhead", "-1", "the least that will do is £0.00"),
        ("weeks", "53", "the most that will do is 52"),
        ("weeks", "0", "the least that will do is 1"),
        ("hours_a_week", "169", "the most that will do is 168"),
        ("hours_a_week", "0", "the least that will do is 0.1"),
        ("hours_a_week", "nan", "no number to calculate with"),
    ],
)
def test_what_makes_no_year_is_told_beside_its_field_and_kept(
    maker: Maker, name: str, typed: str, sentence: str
) -> None:
    page = press(maker, "/workshop/pay", **(PAY | {name: typed}))
    assert maker.status == 422
    assert sentence in page.said_of(name)
    assert {n: page.with_id(n).attributes["value"] for n in PAY} == PAY | {name: typed}
    assert not list(page.root.all("pre"))


def test_a_stale_pay_form_keeps_what_was_typed(maker: Maker) -> None:
    reply = maker.client.post("/workshop/pay", data=PAY | {"csrf_token": "from before"})
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "Once more, please." in page.root.text
    assert page.with_id("income").attributes["value"] == "24000"


def test_the_forms_answer_under_the_workshops_place_in_the_bar(maker: Maker) -> None:
    page = press(maker, "/workshop/pay", **PAY)
    current = [a.text for a in page.root.all("a") if a.attributes.get("aria-current") == "page"]
    assert current == ["Workshop"]
