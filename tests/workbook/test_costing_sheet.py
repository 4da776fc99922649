"""The sheet of the costing, read by its headings and its labels, against sums by hand."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.ground.money import exact
from quoting.core.order.order import Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Pricing, Target, Tax, TaxShown
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.orders import THREE_FEES, quotes
from tests.workbook.reading import block, by, last_figures, plain_block
from tests.workbook.recalculation import opened


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


@pytest.mark.parametrize("name", list(quotes()))
def test_the_answers_on_top_are_the_quotes_each_beside_its_label(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    price, hours = all_quotes[name].price, all_quotes[name].estimate.hours
    found = {
        label: exact(value)
        for label, value in last_figures(read(written[name])["Costing"], "In short").items()
        if label != "Blankets"
    }
    assert found == {
        "The buyer pays": price.total,
        "of it the price, without delivery": price.price,
        "Hours": hours.total,
        "An hour earns": price.earned_per_hour,
        "Profit, after your pay": price.profit,
        "Deposit": price.deposit,
    }


@pytest.mark.parametrize("name", list(quotes()))
def test_deposit_and_balance_are_beside_their_names_and_make_up_the_total(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    price = all_quotes[name].price
    paid = last_figures(read(written[name])["Costing"], "How it is paid")
    assert exact(paid["Deposit"]) == price.deposit
    assert exact(paid["Balance"]) == price.balance == price.total - price.deposit


@pytest.mark.parametrize("name", list(quotes()))
def test_what_the_price_goes_to_adds_up_to_it_part_by_part(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote = all_quotes[name]
    parts = by(block(read(written[name])["Costing"], "Where the price goes"), "A")
    amounts_of: dict[str, Decimal] = {}
    for line in quote.lines:
        part = {
            "yarn": "Yarn",
            "making": "Making",
            "office": "Photographs, packing, letters",
            "overhead": "Overhead",
            "extra": "Extras",
            "packaging": "Packaging and delivery",
            "delivery": "Packaging and delivery",
            "fee": "Fees",
        }.get(line.kind.value)
        if part:
            amounts_of[part] = amounts_of.get(part, Decimal(0)) + line.amount
    amounts_of |= {"Sales tax": quote.price.tax, "Profit": quote.price.profit}
    assert parts.pop("Check")["amount"] == "adds up to the total"
    total = float(quote.price.total)
    assert {name: exact(line["amount"]) for name, line in parts.items()} == {
        name: amounts_of.get(name, Decimal(0)) for name in parts
    }
    for line in parts.values():
        assert line["share"] == pytest.approx(line["amount"] / total)


def test_rush_and_discount_are_for_one_blanket_and_for_all() -> None:
    """Three blankets: a rush of an eighth, then 3.33 % off what that makes."""
    order = sample_order(quantity=3, terms=Terms(rush=0.125, discount=0.0333))
    to_the_penny = replace(sample_workshop().pricing, round_up_to=None)
    quote = sample_quote(order, sample_workshop(pricing=to_the_penny))
    sheet = read(workbook_bytes(quote))["Costing"]
    (top,) = (cell.row for cell in sheet["E"] if cell.value == "for one")
    lines = {
        str(sheet[f"A{row}"].value): [sheet[f"{c}{row}"].value for c in "CEF"]
        for row in range(top + 1, top + 4)
    }
    each = float(quote.price.listed) / 3
    assert lines["Rush"][1] == pytest.approx(each * 0.125, abs=0.02)
    assert lines["Discount"][1] == pytest.approx(-each * 1.125 * 0.0333, abs=0.02)
    assert lines["Up to the least price"] == [3, 0, 0]
    for count, one, together in lines.values():
        assert together == pytest.approx(count * one)
    moved = sum(exact(line[2]) for line in lines.values())
    assert quote.price.price == quote.price.listed + moved


def test_the_head_says_whose_quote_it_is_of_which_day_and_until_when(
    written: dict[str, bytes], all_quotes: dict[str, Quote]
) -> None:
    sheet = read(written["plain"])["Costing"]
    assert sheet["A1"].value == "Cot blanket in moorland stripes"
    head = str(sheet["A2"].value)
    assert all_quotes["plain"].number in head
    assert "for Rosalind Quill" in head
    assert re.findall(r"\d+ \w+ 2026", head) == ["25 November 2026", "16 December 2026"]


def test_terms_stand_beside_their_names() -> None:
    pricing = Pricing(
        target=Target(margin=0.15),
        round_up_to=Decimal("2.50"),
        minimum=Decimal("61.00"),
        deposit=Deposit(share=0.3),
    )
    order = sample_order(terms=Terms(rush=0.1, discount=0.05))
    tax = Tax(registered=True, rate=0.07, shown=TaxShown.ADDED, on_delivery=False)
    shop = sample_workshop(pricing=pricing, tax=tax, fees=THREE_FEES)
    sheet = read(workbook_bytes(sample_quote(order, shop)))["Costing"]
    asked = last_figures(sheet, "What you ask for it")
    del asked["Given price"]
    assert asked == {
        "The price follows": "margin",
        "Margin": 0.15,
        "Markup": 0,
        "Round up to": 2.5,
        "Rush": 0.1,
        "Discount": 0.05,
        "Least price": 61,
        "Delivery charged": 5,
        "Deposit": "share of the total",
        "Deposit, share of the total": 0.3,
    }
    assert last_figures(sheet, "Sales tax") == {
        "Registered for it": "yes",
        "Rate": 0.07,
        "In the price shown": "added",
        "On delivery too": "no",
    }
    fees = {
        line["A"]: [line["on"], line["rate"], line["for each payment"]]
        for line in block(sheet, "Fees")
    }
    assert fees == {
        "Card payment": ["total", 0.015, 0.2],
        "Market stall": ["price", 0.065, 0],
        "Listing": ["price and delivery", 0.03, 0.35],
    }


def test_the_buyers_currency_is_at_its_rate_of_its_day_with_its_cushion() -> None:
    rate = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)
    order = sample_order(pays_in="EUR", terms=Terms(target=Target(given=Decimal(200))))
    book = read(workbook_bytes(sample_quote(order, sample_workshop(exchange={"EUR": rate}))))
    lines = plain_block(book["Costing"], "How it is paid")
    (rate_line,) = (line for line in lines if line.get("F") == 1.17)
    assert "25 November 2026" in rate_line["B"]
    assert "EUR" in rate_line["A"]
    # 205 × 1.17 × 1.02 = 244.647, by hand
    assert {line["A"]: line["F"] for line in lines}["The buyer pays in EUR"] == 244.65
