"""The ways to make a price are one choice: the one that is chosen counts, and it alone."""

from tests.web.conftest import Maker
from tests.web.pages import Page


def chosen(page: Page) -> str:
    """Return the way that is chosen."""
    return page.typed()["price_by"]


def test_the_workshops_own_way_is_chosen_where_nothing_was_typed(maker: Maker) -> None:
    assert chosen(maker.open()) == ""


def test_a_way_that_is_typed_is_chosen_by_that_where_no_choice_is_sent(maker: Maker) -> None:
    page = maker.send("/", price__given="185")
    assert chosen(page) == "given"
    assert page.figure("Price") == "£185.00"


def test_the_workshops_own_way_chosen_again_counts_whatever_stays_typed(maker: Maker) -> None:
    usual = maker.open().figure("Price")
    page = maker.send("/", price_by="", price__given="185", price__margin="lots")
    assert page.figure("Price") == usual
    assert (chosen(page), page.typed()["price.given"]) == ("", "185")
    assert "It counts only while it is chosen." in page.root.text


def test_of_two_that_are_typed_the_chosen_one_counts_and_the_other_stays(maker: Maker) -> None:
    page = maker.send("/", price_by="given", price__given="185", price__margin="90")
    assert page.figure("Price") == "£185.00"
    assert page.typed()["price.margin"] == "90"
    assert chosen(maker.send("/", price_by="margin", price__given="1", price__margin="2")) == (
        "margin"
    )


def test_of_a_way_that_was_not_chosen_not_even_a_mistake_counts(maker: Maker) -> None:
    page = maker.send("/", price_by="given", price__given="185", price__margin="lots")
    assert page.figure("Price") == "£185.00"


def test_a_way_that_is_chosen_and_left_blank_is_still_to_fill_in(maker: Maker) -> None:
    page = maker.send("/answer", price_by="given")
    assert "Still to fill in: A price of my own" in page.root.text
    page = maker.send("/quote", price_by="markup", order__title="")
    assert "This is missing" in page.said_of("price.markup")
    assert "This is missing" in page.said_of("order.title")
