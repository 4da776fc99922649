"""The JSON of a quote: every promised key, and sums that hold to the cent."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from exports.records.quote_record import quote_record
from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Target
from tests.cli.running import record_of
from tests.examples import TODAY, WOOL, sample_minutes, sample_order, sample_workshop

SPECIAL = {"discount", "rush", "minimum", "fee"}
PROMISED = {
    "blanket": "stitches foundation_chain rows rows_by_colour rows_by_section border_rounds"
    " width_cm height_cm",
    "strands": "count ends carries cuts joins list",
    "hours": "stitching turning changing joining weaving_in finishing office total low high",
    "price": "currency lines cost fees tax price delivery total deposit balance profit margin"
    " earned_per_hour",
}

AMOUNTS = ["cost", "fees", "tax", "profit", "total", "deposit", "price", "delivery", "balance"]
PARTS = ["stitching", "turning", "changing", "joining", "weaving_in", "finishing", "office"]


def test_json_has_every_promised_key(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    for table, keys in PROMISED.items():
        assert set(keys.split()) <= set(record[table]), table
    yarn = "colour yarn metres grams metres_to_buy skeins purchase from_stock_grams cost"
    for entry in record["yarn"]:
        assert set(f"{yarn} metres_left".split()) <= set(entry)
        assert all(set(some) >= {"grams", "metres", "count", "price"} for some in entry["purchase"])
    for strand in record["strands"]["list"]:
        assert set(strand) == {"colour", "starts", "ends", "metres", "why"}
        assert set(strand["starts"]) == set(strand["ends"]) == {"pass", "edge"}
    for line in record["price"]["lines"]:
        assert set(line) == {"kind", "what", "quantity", "unit", "rate", "amount"}
    for warning in record["warnings"]:
        assert set(warning) == {"code", "for", "facts", "text"}


def test_the_demo_comes_out_as_it_is_reckoned_by_hand(capsys: pytest.CaptureFixture[str]) -> None:
    """98 stitches of 0.8 cm and 103 rows of 0.95 cm, with a round of sc (model, parts 3 and 4)."""
    record = record_of(capsys, "--demo")
    blanket = record["blanket"]
    assert blanket["stitches"] == 98
    assert blanket["foundation_chain"] == 100
    assert blanket["rows"] == 103
    assert blanket["rows_by_colour"] == {"oat": 35, "teal": 34, "rust": 34}
    assert blanket["border_rounds"] == [440]
    assert record["strands"]["carries"] == 100
    assert record["strands"]["ends"] == 2 * record["strands"]["count"]


def test_payments_are_kept_one_by_one_and_the_balance_is_all_after_the_deposit() -> None:
    """By hand: of 297 a half is 148.50, a fifth is 59.40, and 89.10 is left."""
    pricing = replace(sample_workshop().pricing, at_half=0.2)
    order = sample_order(terms=Terms(target=Target(given=Decimal(292))))
    quote = quote_order(order, sample_workshop(pricing=pricing), today=TODAY)
    price: Any = quote_record(quote)["price"]
    paid = {name: price[name] for name in ("deposit", "balance", "at_half", "rest", "payments")}
    assert paid == {
        "deposit": "148.50",
        "balance": "148.50",
        "at_half": "59.40",
        "rest": "89.10",
        "payments": 3,
    }


def test_the_sums_of_the_demo_hold_to_the_cent(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    price = record["price"]
    money = {
        name: Decimal(price[name]) for name in ["cost", "fees", "tax", "profit", "total", "deposit"]
    }
    assert money["total"] == money["cost"] + money["fees"] + money["tax"] + money["profit"]
    assert Decimal(price["balance"]) == money["total"] - money["deposit"]
    amounts = [(line["kind"], Decimal(line["amount"])) for line in price["lines"]]
    assert sum(amount for kind, amount in amounts if kind == "fee") == money["fees"]
    assert sum(amount for kind, amount in amounts if kind not in SPECIAL) == money["cost"]
    yarn = sum(amount for kind, amount in amounts if kind == "yarn")
    assert sum(Decimal(entry["cost"]) for entry in record["yarn"]) == yarn


def test_every_line_is_its_quantity_times_its_rate(capsys: pytest.CaptureFixture[str]) -> None:
    for line in record_of(capsys, "--demo")["price"]["lines"]:
        product = Decimal(str(line["quantity"])) * Decimal(line["rate"])
        assert abs(product - Decimal(line["amount"])) <= Decimal("0.005"), line


def test_hours_are_numbers_whose_parts_add_up(capsys: pytest.CaptureFixture[str]) -> None:
    hours = record_of(capsys, "--demo")["hours"]
    total = sum(Decimal(str(hours[part])) for part in PARTS)
    assert total == Decimal(str(hours["total"]))
    assert hours["low"] <= hours["total"] <= hours["high"]


def test_hours_name_the_work_that_is_not_in_them_and_the_yarn_of_each_stitch() -> None:
    workshop = sample_workshop(minutes=sample_minutes(wash=None))
    record: Any = quote_record(quote_order(sample_order(), workshop, today=TODAY))
    assert record["hours"]["not_given"] == ["wash"]
    yarns = {task["what"]: task["yarn"] for task in record["hours"]["tasks"]}
    assert (yarns["hdc"], yarns["letters"]) == (WOOL, None)


def test_metres_of_the_strands_are_those_of_the_yarn(capsys: pytest.CaptureFixture[str]) -> None:
    record = record_of(capsys, "--demo")
    for entry in record["yarn"]:
        mine = [s["metres"] for s in record["strands"]["list"] if s["colour"] == entry["colour"]]
        assert sum(mine) == pytest.approx(entry["metres"], abs=0.01)


def test_money_is_text_with_the_currencys_own_decimals() -> None:
    workshop = sample_workshop(currency="KWD", exchange={})
    record: Any = quote_record(quote_order(sample_order(pays_in=None), workshop, today=TODAY))
    for name in AMOUNTS:
        assert len(record["price"][name].partition(".")[2]) == 3, name


def test_a_discount_moves_the_price_and_is_no_cost() -> None:
    order = sample_order(terms=Terms(discount=0.05))
    record: Any = quote_record(quote_order(order, sample_workshop(), today=TODAY))
    price = record["price"]
    moves = [Decimal(x["amount"]) for x in price["lines"] if x["kind"] in {"discount", "minimum"}]
    assert moves
    assert all(move < 0 for move in moves)
    assert Decimal(price["listed"]) + sum(moves) == Decimal(price["price"])
    costs = [Decimal(x["amount"]) for x in price["lines"] if x["kind"] not in SPECIAL]
    assert sum(costs) == Decimal(price["cost"])


def test_several_blankets_say_of_which_each_strand_is() -> None:
    record: Any = quote_record(
        quote_order(sample_order(quantity=2), sample_workshop(), today=TODAY)
    )
    pieces = {strand["starts"]["piece"] for strand in record["strands"]["list"]}
    assert pieces == {0, 1}


def test_a_buyers_currency_is_kept_with_its_rate_and_day() -> None:
    rate = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)
    workshop = sample_workshop(exchange={"EUR": rate})
    record: Any = quote_record(quote_order(sample_order(pays_in="EUR"), workshop, today=TODAY))
    said = record["price"]["in_buyers_currency"]
    total = Decimal(record["price"]["total"]) * Decimal("1.17") * Decimal("1.02")
    assert abs(Decimal(said["amount"]) - total) <= Decimal("0.005")
    assert (said["currency"], said["rate"], said["day"]) == ("EUR", "1.17", "2026-11-25")
    assert (said["units"], said["per"]) == ("1.17", "1")
