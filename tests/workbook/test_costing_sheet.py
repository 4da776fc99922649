"""The sheet of the costing, read by its headings and its labels, against sums by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import Look
from quoting.core.ground.money import exact
from quoting.core.order.order import Terms
from quoting.core.price.least_prices import break_even_price, earned_in, paying_price
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Pricing, Target, Tax, TaxShown
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.comparisons import COT, PRAM, compared
from tests.workbook.orders import THREE_FEES, quotes
from tests.workbook.reading import block, by, last_figures, plain_block
from tests.workbook.recalculation import opened


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


@pytest.mark.parametrize("name", list(quotes()))
def test_the_answers_on_top_are_the_quotes_each_beside_its_label(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    price, sheet = all_quotes[name].price, read(written[name])["Summary"]
    found = {
        line["A"]: (exact(line["as it stands"]), exact(line["as quoted"]), line["difference"])
        for title in (
            "What the buyer pays",
            "What is left",
            "The least price of one blanket, without delivery",
        )
        for line in block(sheet, title)
        if "pays in" not in line["A"]
    }
    wanted = {
        "Price of one blanket": price.each,
        "Price of all blankets": price.price,
        "Delivery": price.delivery,
        "Net, before sales tax": price.total - price.tax,
        "Sales tax": price.tax,
        "Gross: the buyer pays": price.total,
        "Deposit": price.deposit,
        "Balance": price.balance,
        "of it when half is made": price.parts.at_half,
        "All costs, your pay with them": price.cost,
        "Fees": price.fees,
        "Profit, after your pay": price.profit,
        "Margin reached": price.margin,
        "An hour earns": price.earned_per_hour,
        "Breaks even: all is paid but your own hours": break_even_price(price),
        "Pays your hours too, and no profit": paying_price(price),
    }
    assert found == {label: (figure, figure, 0) for label, figure in wanted.items()}


@pytest.mark.parametrize("name", list(quotes()))
def test_it_says_what_an_hour_earns_of_the_fewest_the_expected_and_the_most_hours(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    price, hours = all_quotes[name].price, all_quotes[name].estimate.hours
    lines = block(read(written[name])["Summary"], "The hours, and what an hour earns")
    found = [(exact(line["hours"]), exact(line["an hour earns"])) for line in lines]
    assert found == [
        (each, earned_in(each, price)) for each in (hours.low, hours.total, hours.high)
    ]
    assert found[1][1] == price.earned_per_hour


@pytest.mark.parametrize("name", list(quotes()))
def test_deposit_and_balance_are_beside_their_names_and_make_up_the_total(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    price = all_quotes[name].price
    paid = last_figures(read(written[name])["Costing"], "How it is paid")
    assert exact(paid["Deposit"]) == price.deposit
    assert exact(paid["Balance"]) == price.balance == price.total - price.deposit
    later = [exact(paid[label]) for label in ("Part payment", "Rest")]
    assert later == [price.parts.at_half, price.parts.rest]
    assert sum(later) == price.balance
    assert paid["Payments"] == price.payments


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
            "office": "Admin: photos, packing, messages",
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
    assert lines["Up to the minimum charge"] == [3, 0, 0]
    for count, one, together in lines.values():
        assert together == pytest.approx(count * one)
    moved = sum(exact(line[2]) for line in lines.values())
    assert quote.price.price == quote.price.listed + moved


def test_the_head_says_whose_quote_it_is_of_which_day_and_until_when(
    written: dict[str, bytes], all_quotes: dict[str, Quote]
) -> None:
    sheet = read(written["plain"])["Summary"]
    assert sheet["A1"].value == "Cot blanket in moorland stripes"
    assert sheet["A2"].value == "All checks are well."
    head = {line["A"]: line["B"] for line in plain_block(sheet, "The quote")}
    assert head["Number"] == all_quotes["plain"].number
    assert head["For"] == "Rosalind Quill"
    assert head["Given on"] == datetime(2026, 11, 25)  # noqa: DTZ001 - a cell has no zone
    assert head["Valid until"] == datetime(2026, 12, 16)  # noqa: DTZ001
    assert head["All amounts are in"] == "GBP"


def test_terms_stand_beside_their_names() -> None:
    pricing = Pricing(
        target=Target(margin=0.15),
        round_up_to=Decimal("2.50"),
        minimum=Decimal("61.00"),
        deposit=Deposit(share=0.3),
        at_half=0.2,
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
        "Minimum charge": 61,
        "Delivery charged": 5,
        "Deposit": "share of the total",
        "Deposit, share of the total": 0.3,
        "When half is made, share of the total": 0.2,
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
        if "rate" in line
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
    assert {line["A"]: line["F"] for line in lines if "F" in line}[
        "The buyer pays in EUR"
    ] == 244.65


@pytest.mark.parametrize(
    ("content", "sheet"),
    [
        (workbook_bytes(sample_quote()), "Costing"),
        (comparison_bytes(compared(PRAM, COT)), "Terms"),
    ],
    ids=["costing", "comparison"],
)
def test_every_figure_as_quoted_stands_under_a_heading_that_says_so(
    content: bytes, sheet: str
) -> None:
    headed, without = False, []
    for cells in opened(content)[sheet].iter_rows():
        texts = [cell.value for cell in cells if cell.value is not None]
        headed = bool(texts) and (headed or "as quoted" in texts)
        quoted = [cell.coordinate for cell in cells if cell.style == Look.QUOTED]
        without += [] if headed else quoted
    assert without == []
