"""Several blankets alike, a rush, a discount: each and for all, line by line."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.wording import speech_of
from tests.examples import TODAY, sample_workshop
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Page

SAY = speech_of(sample_workshop())
TYPED = {"order__quantity": "3", "price__rush": "10", "price__discount": "5"}
MOVED = replace(ORDER, quantity=3, terms=Terms(rush=0.10, discount=0.05))
PRICE = quote_order(MOVED, sample_workshop(), today=TODAY).price


def offered(page: Page) -> dict[str, str]:
    """Return the rows of the buyer's first table."""
    table = next(page.root.all("table"))
    rows = [[c.text for c in row.all(lambda n: n.tag in {"th", "td"})] for row in table.all("tr")]
    return {row[0]: row[-1] for row in rows}


def test_the_worktable_shows_the_price_for_all_and_for_each(maker: Maker) -> None:
    figure = maker.send("/answer", order__quantity="3").figure("Price")
    price = quote_order(replace(ORDER, quantity=3), sample_workshop(), today=TODAY).price
    assert figure == f"{SAY.money(price.price)} 3 × {SAY.money(price.each)}"


def test_rush_and_discount_are_lines_each_and_for_all(maker: Maker) -> None:
    rows = {row[0]: row[1:] for row in maker.send("/answer", **TYPED).table("Each, GBP")}
    assert rows["Price"] == [SAY.bare_money(PRICE.each), SAY.bare_money(PRICE.price)]
    assert rows["Base price"] == [SAY.bare_money(PRICE.listed / 3), SAY.bare_money(PRICE.listed)]
    listed = Decimal(rows["Base price"][1].replace(",", ""))
    rush, discount = (Decimal(rows[name][1]) for name in ("Rush, 10%", "Discount, 5%"))
    assert rush > 0 > discount
    assert listed + rush + discount == PRICE.price


def test_the_quote_shows_the_same_lines_to_the_buyer(maker: Maker) -> None:
    rows = offered(maker.send("/quote", **TYPED))
    assert rows[f"3 blankets, each {SAY.money(PRICE.listed / 3)}"] == SAY.money(PRICE.listed)
    assert rows[f"Together, each {SAY.money(PRICE.each)}"] == SAY.money(PRICE.price)
    assert {"Rush, 10%", "Discount, 5%"} <= rows.keys()
    assert rows["Total"] == SAY.money(PRICE.total)


def test_one_blanket_without_rush_or_discount_has_no_such_table(maker: Maker) -> None:
    page = maker.open()
    assert page.figure("Price").startswith("£")
    assert "Each, GBP" not in page.root.text
    assert list(offered(maker.send("/quote")))[:3] == ["The blanket", "Delivery", "Total"]
