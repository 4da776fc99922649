"""The shopping list on a page: of the worktable, of one kept order, of all that are agreed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.making.shopping_list import ToMake, shopping_list
from quoting.core.order.stage import Stage
from quoting.core.quote.quote import quote_order
from quoting.store.orders import create_order
from tests.examples import SMALL, TODAY, sample_workshop, sample_yarn
from tests.store.contents import half, whole
from tests.store.moments import NOW
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import ORDER, Maker
from tests.web.making_pages import SIZE, agree, number_of, put_at, write_line
from tests.web.pages import Page

SHOP = sample_workshop(yarns=(sample_yarn(put_ups=(SMALL,)),))


@pytest.fixture
def keeper(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose book has one kind of ball, and 60 g of oat on the shelf."""
    with maker_with_book(tmp_path / "book.db", SHOP) as maker:
        yield maker


def needs(maker: BookMaker, title: str) -> str:
    """Agree an order for a teal blanket, and return its address."""
    typed = {"blanket__sections__1__stripes__1__colour": "teal", "blanket__width": "60 cm"}
    return agree(maker, order__title=title, order__buyer="Tam Fell", **typed)


def bought(page: Page) -> dict[str, int]:
    """Return how many balls are bought of each colour of the wool."""
    rows = page.table("How many")[1:]
    return {row[1].split(",")[0]: int(row[4]) for row in rows}


def test_the_worktables_list_is_what_its_estimate_buys(maker: Maker) -> None:
    page = maker.send("/shopping")
    quote = quote_order(ORDER, sample_workshop(), today=TODAY)
    assert bought(page) == {c.colour: c.choice.skeins for c in quote.estimate.colours}
    assert "A spare skein of each line would add" in page.root.text
    assert all(row[0] == "☐" for row in page.table("How many")[1:])


def test_the_worktable_leads_to_it(maker: Maker) -> None:
    buttons = {b.text: b.attributes for b in maker.open().root.all("button")}
    assert buttons["Shopping list"]["formaction"] == "/shopping"


def test_an_order_that_is_not_whole_is_put_right_first(maker: Maker) -> None:
    page = maker.send("/shopping", blanket__width="")
    assert maker.status == 422
    assert "width" in page.root.text.lower()


def test_whoever_opens_the_address_anew_is_led_to_the_order(maker: Maker) -> None:
    assert maker.client.get("/shopping").location == "/"


def test_a_book_in_which_nothing_is_agreed_says_so(keeper: BookMaker) -> None:
    assert "No order waits for its yarn" in keeper.open("/orders/shopping").root.text


def test_the_orders_page_leads_to_it(keeper: BookMaker) -> None:
    links = [link.attributes["href"] for link in keeper.open("/orders").root.all("a")]
    assert "/orders/shopping" in links


def test_agreed_orders_are_bought_for_together_and_each_can_be_left_out(
    keeper: BookMaker,
) -> None:
    first, second = needs(keeper, "Cot blanket"), needs(keeper, "Throw")
    alone = bought(keeper.open(f"/orders/shopping?asked=yes&order={number_of(first)}"))
    page = keeper.open("/orders/shopping")
    assert bought(page)["teal"] < 2 * alone["teal"]
    ticks = [n.attributes for n in page.root.all("input") if n.attributes.get("name") == "order"]
    assert [tick["value"] for tick in ticks] == [str(number_of(first)), str(number_of(second))]
    assert all("checked" in tick for tick in ticks)
    assert "Cot blanket" in page.root.text


def test_the_same_wool_is_named_for_each_order(keeper: BookMaker) -> None:
    needs(keeper, "Throw")
    needs(keeper, "Throw")
    text = keeper.open("/orders/shopping").root.text
    assert "Throw (Tam Fell) 1" in text
    assert "Throw (Tam Fell) 2" in text


def test_without_a_tick_there_is_no_list(keeper: BookMaker) -> None:
    needs(keeper, "Cot blanket")
    page = keeper.open("/orders/shopping?asked=yes")
    assert "Tick the orders to buy for." in page.root.text
    assert not list(page.root.all("table"))


def test_a_spare_is_a_tick(keeper: BookMaker) -> None:
    needs(keeper, "Cot blanket")
    plain = bought(keeper.open("/orders/shopping"))
    spared = keeper.open("/orders/shopping?asked=yes&order=1&spare=yes")
    assert bought(spared) == {colour: balls + 1 for colour, balls in plain.items()}
    assert "checked" in spared.with_id("spare").attributes


def test_yarn_that_was_got_is_not_bought_again(keeper: BookMaker) -> None:
    address = needs(keeper, "Cot blanket")
    needed = bought(keeper.open("/orders/shopping"))["teal"]
    write_line(keeper, address, "yarn-taken", colour="teal", grams=str(100 * needed))
    page = keeper.open("/orders/shopping")
    assert "In the house already for Cot blanket: teal." in page.root.text
    assert "Nothing has to be bought." in page.root.text


def test_what_is_finished_is_not_on_the_list(keeper: BookMaker) -> None:
    address = needs(keeper, "Cot blanket")
    put_at(keeper, address, "on-the-hook", "finished")
    assert "No order waits for its yarn" in keeper.open("/orders/shopping").root.text


def test_an_order_that_is_agreed_by_no_quote_is_bought_for_as_it_stands(
    keeper: BookMaker,
) -> None:
    create_order(keeper.book, whole(title="Old one"), now=NOW, stage=Stage.AGREED)
    assert bought(keeper.open("/orders/shopping"))


def test_one_that_is_not_whole_is_left_out_with_a_word(keeper: BookMaker) -> None:
    create_order(keeper.book, half("Nameless"), now=NOW, stage=Stage.AGREED)
    text = keeper.open("/orders/shopping").root.text
    assert "Left out: Nameless is not whole" in text


def test_one_order_has_a_list_of_its_own_before_it_is_agreed(keeper: BookMaker) -> None:
    address = keeper.begin(**SIZE)
    page = keeper.open(f"{address}/shopping")
    asked = bought(page)
    assert asked
    assert "The list of all agreed orders" in page.root.text
    assert keeper.open(f"{keeper.begin()}/shopping").root.text.count("Left out") == 1


def test_the_page_of_making_leads_to_the_list_of_the_order(keeper: BookMaker) -> None:
    address = needs(keeper, "Cot blanket")
    links = [a.attributes["href"] for a in keeper.open(f"{address}/making").root.all("a")]
    assert f"{address}/shopping" in links


def test_there_is_no_list_of_an_order_that_is_not_there(keeper: BookMaker) -> None:
    keeper.open("/orders/99/shopping")
    assert keeper.status == 404


def test_an_order_by_any_other_number_is_not_ticked(keeper: BookMaker) -> None:
    needs(keeper, "Cot blanket")
    page = keeper.open("/orders/shopping?asked=yes&order=7&order=x")
    assert keeper.status == 200
    assert "Tick the orders to buy for." in page.root.text


def test_the_pages_sum_is_the_cores(maker: Maker) -> None:
    quote = quote_order(ORDER, sample_workshop(), today=TODAY)
    cost = shopping_list([ToMake(quote=quote)], sample_workshop()).cost
    assert f"£{cost}" in maker.send("/shopping").root.text
