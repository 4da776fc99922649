"""Sizes are compared before the order is whole, and what stood in never becomes the order's."""

from __future__ import annotations

from pathlib import Path

import pytest

from quoting.store.orders import kept_order
from tests.examples import sample_workshop
from tests.web.asked_sizes import SHOP, sizes_of
from tests.web.book_pages import maker_with_book
from tests.web.conftest import Maker
from tests.web.pages import Page

SIX_NAMES = [size.name for size in SHOP.sizes[:6]]


def compare(maker: Maker, **typed: str) -> Page:
    """Type into the worktable of the sample order, and press “Compare sizes”."""
    return maker.send("/sizes/of-order", **typed)


def take(maker: Maker, page: Page, **pressed: str) -> dict[str, str]:
    """Press a button of the Sizes page that leads back, and return the worktable's fields."""
    reply = maker.client.post("/sizes/take", data=page.typed() | pressed)
    assert reply.status_code == 200
    return Page(reply.text).typed()


def not_given(page: Page) -> str:
    """Return what the page says is not given yet."""
    return page.with_id("not-given").text


def without_stripes(maker: Maker) -> dict[str, str]:
    """Return the worktable's fields with no section in it."""
    fields = maker.open("/").typed()
    return {n: text for n, text in fields.items() if not n.startswith("blanket.sections.")}


def test_blanks_are_named_with_what_stands_in_for_them(maker: Maker) -> None:
    page = compare(maker, order__title="", blanket__height="")
    assert maker.status == 200
    said = "Not given yet: title, length; compared with “Blanket” and 100 cm meanwhile."
    assert not_given(page) == f"{said} Back to the order"
    (link,) = page.with_id("not-given").all("a")
    assert link.attributes["href"] == "/"


def test_a_size_that_is_not_given_is_no_size_of_the_order(maker: Maker) -> None:
    page = compare(maker, blanket__width="")
    assert sizes_of(page) == SIX_NAMES
    assert "as ordered" not in page.root.text
    assert "The order’s own size" not in [node.text for node in page.root.all("legend")]


def test_a_size_given_later_is_compared_as_the_orders_own(maker: Maker) -> None:
    before = compare(maker, blanket__width="").typed()
    after = maker.open("/").typed() | before | {"blanket.width": "90 cm"}
    page = Page(maker.client.post("/sizes/of-order", data=after).text)
    assert sizes_of(page) == ["90 × 100 cm", *SIX_NAMES]
    assert page.typed()["stood_in"] == ""
    assert "Not given yet" not in page.root.text


def test_a_size_left_blank_later_is_compared_no_more_as_the_orders_own(maker: Maker) -> None:
    sent = maker.open("/").typed() | maker.open("/sizes").typed() | {"blanket.width": ""}
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    assert sizes_of(page) == SIX_NAMES
    assert not_given(page).startswith("Not given yet: width;")


@pytest.mark.parametrize("text", [{}, {"blanket.sections.1.stripes.as_list": " "}])
def test_an_order_without_stripes_is_compared_plain(maker: Maker, text: dict[str, str]) -> None:
    sent = without_stripes(maker) | text
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    assert not_given(page).startswith("Not given yet: stripes; compared with one plain stripe")
    names = [n for n in take(maker, page) if n.startswith("blanket.sections.") and "stripes" in n]
    assert names == []


def test_the_plain_stripe_is_of_the_orders_own_yarn(maker: Maker) -> None:
    sent = without_stripes(maker)
    page = Page(maker.client.post("/sizes/of-order", data=sent).text)
    yarn = sample_workshop().yarn(sent["blanket.yarn"])
    assert f'colour = "{next(iter(yarn.colours))}"' in page.typed()["order_file"]


def test_the_way_back_leaves_blank_what_was_blank(maker: Maker) -> None:
    page = compare(maker, order__title="", blanket__width="")
    back = take(maker, page)
    assert (back["order.title"], back["blanket.width"]) == ("", "")
    assert (back["order.buyer"], back["blanket.height"]) == ("Rosalind Quill", "100 cm")


def test_a_size_taken_over_is_given_and_the_title_stays_blank(maker: Maker) -> None:
    page = compare(maker, order__title="", blanket__width="")
    back = take(maker, page, take="80.0x100.0cm")
    assert (back["blanket.width"], back["blanket.height"]) == ("80 cm", "100 cm")
    assert back["order.title"] == ""


def test_a_change_taken_over_leaves_the_size_blank(maker: Maker) -> None:
    page = compare(maker, blanket__height="")
    back = take(maker, page, budget="250", take="smaller-border")
    assert not any(name.startswith("blanket.border") for name in back)
    assert back["blanket.height"] == ""


def test_what_stood_in_comes_along_as_one_compares(maker: Maker) -> None:
    sent = compare(maker, order__title="").typed() | {"own.1.size": "90x90"}
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert not_given(page).startswith("Not given yet: title;")
    assert take(maker, page)["order.title"] == ""


def test_any_other_mistake_beside_a_blank_stays_on_the_worktable(maker: Maker) -> None:
    page = compare(maker, order__title="", blanket__width="wide")
    assert maker.status == 422
    assert page.headings[0] == "Order"
    assert "missing" in page.said_of("order.title")
    assert "cannot be read" in page.said_of("blanket.width")


def test_a_line_begun_and_left_half_blank_stays_on_the_worktable(maker: Maker) -> None:
    page = compare(maker, order__title="", extras__1__what="")
    assert maker.status == 422
    assert "missing" in page.said_of("extras.1.what")


def test_an_order_of_a_book_goes_back_to_its_page_as_blank_as_it_was(tmp_path: Path) -> None:
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        address = maker.begin(order__title="")
        page = maker.send("/sizes/of-order", address)
        assert not_given(page).startswith("Not given yet: title, width, length;")
        (link,) = page.with_id("not-given").all("a")
        assert link.attributes["href"] == address
        take(maker, page, take="70.0x90.0cm")
        kept = kept_order(maker.book, int(address.rsplit("/", 1)[1])).content
        assert kept.title == ""
        assert kept.typed["blanket.width"] == ("70 cm",)
