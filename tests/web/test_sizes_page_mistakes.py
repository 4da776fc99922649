"""What the Sizes page says of a mistake, and that what was typed is kept."""

from __future__ import annotations

import pytest

from tests.examples import sample_workshop
from tests.web.asked_sizes import ask, price_of
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page

BAD = (
    ("target", "own.1.size", "wide", "cannot be read as a size"),
    ("target", "own.1.size", "70", "cannot be read as a size"),
    ("target", "own.1.size", "70 x 90 stone", "no unit that is known"),
    ("target", "own.1.size", "0 x 90", "must be more than 0 cm"),
    ("target", "own.1.size", "-70 x 90", "must be more than 0 cm"),
    ("target", "own.1.size", "70 x 1e9", "cannot be read"),
    ("target", "own.1.size", "70 x 9999999", "the most that will do is 1,000 cm"),
    ("target", "own.1.size", "70 x nan", "no unit that is known"),
    ("target", "own.1.size", "7" * 70, "too long"),
    ("target", "own.1.size", "130 x 160 cm", "is among the sizes already"),
    ("target", "budget", "0", "must be more than £0.00"),
    ("target", "budget", "-5", "must be more than £0.00"),
    ("target", "budget", "a hundred", "cannot be read as a number"),
    ("target", "budget", "1,50", "may mean 1.5 or 150"),
    ("target", "budget", "9" * 15, "too large"),
    ("prices", price_of("Cot"), "0", "must be more than"),
    ("prices", price_of("Cot"), "-3", "must be more than"),
    ("prices", price_of("Cot"), "cheap", "cannot be read as a number"),
    ("prices", "own.2.price", "90", "This is missing"),
    ("neither", "asks", "neither", "not among what can be chosen"),
)

SAID_AT = {"own.2.price": "own.2.size"}


@pytest.mark.parametrize(("asks", "name", "typed", "sentence"), BAD, ids=lambda x: str(x)[:30])
def test_a_bad_value_is_told_beside_its_field_and_everything_typed_is_kept(
    maker: Maker, asks: str, name: str, typed: str, sentence: str
) -> None:
    sent = maker.open("/sizes").typed() | {"asks": asks, name: typed}
    page = Page(maker.client.post("/sizes", data=sent).text)
    field = SAID_AT.get(name, name)
    assert sentence in page.said_of(field)
    assert any(a.attributes["href"] == f"#{field}" for a in page.with_id("mistakes").all("a"))
    assert "Side by side" not in page.headings
    after = page.typed() | ({"asks": asks} if name == "asks" else {})
    assert after == sent | {"csrf_token": after["csrf_token"]}


def test_a_size_typed_twice_is_told_once(maker: Maker) -> None:
    page = ask(maker, own__1__size="90x90", own__2__size="0.9 m x 0.9 m")
    assert page.said_of("own.1.size") == "Read as 90 × 90 cm"
    assert "90 × 90 cm” is among the sizes already" in page.said_of("own.2.size")


def test_more_sizes_than_can_be_compared_are_refused_beside_their_list(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    sent |= {f"own.{number}.size": f"{60 + number} x 91" for number in range(1, 51)}
    page = Page(maker.client.post("/sizes", data=sent).text)
    assert "56 of them are too many; at most 50 will do." in page.said_of("own")
    assert page.with_id("own").tag == "ol"


def test_another_line_for_a_size_is_added_with_the_focus_in_it(maker: Maker) -> None:
    page = ask(maker, do="add own")
    focused = page.root.all(lambda node: "autofocus" in node.attributes)
    assert [node.attributes["name"] for node in focused] == ["own.4.size"]


def test_a_size_of_nothing_by_nothing_names_both_sides(maker: Maker) -> None:
    said = ask(maker, own__1__size="0x0").said_of("own.1.size")
    sentence = "0 cm is too small; it must be more than 0 cm."
    assert said == f"Width: {sentence} Length: {sentence}"


@pytest.mark.parametrize("budget", ["0", "-5", "9" * 15])
def test_a_mistake_in_the_budget_names_the_currency(maker: Maker, budget: str) -> None:
    assert "£" in ask(maker, budget=budget).said_of("budget")


def test_what_was_typed_outlives_a_restart(maker: Maker) -> None:
    typed = maker.open("/sizes").typed() | {"own.1.size": "91 x 91", "csrf_token": "from before"}
    again = maker_in(sample_workshop())
    reply = again.client.post("/sizes", data=typed)
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "Once more, please." in page.root.text
    assert page.typed()["own.1.size"] == "91 x 91"


def test_an_order_that_the_workshop_cannot_make_any_more_is_refused_in_words(maker: Maker) -> None:
    sent = maker.open("/sizes").typed()
    sent["order_file"] = sent["order_file"].replace("teal", "puce")
    reply = maker.client.post("/sizes", data=sent | {"own.1.size": "91 x 91"})
    page = Page(reply.text)
    assert reply.status_code == 422
    assert "has no colour “puce”" in page.with_id("mistakes").text
    assert "blanket.sections.1.stripes.1.colour" in page.with_id("mistakes").text
    assert page.typed()["own.1.size"] == "91 x 91"


@pytest.mark.parametrize("address", ["/sizes", "/sizes/answer", "/sizes/take", "/sizes/workbook"])
def test_without_any_order_the_page_says_that_it_is_missing(maker: Maker, address: str) -> None:
    token = maker.open("/sizes").typed()["csrf_token"]
    reply = maker.client.post(address, data={"csrf_token": token, "own.1.size": "91 x 91"})
    assert reply.status_code == 422
    assert "The order, " in Page(reply.text).with_id("mistakes").text


def test_an_order_that_cannot_be_read_after_a_restart_leaves_sizes_and_prices(maker: Maker) -> None:
    sent = {"order_file": "nonsense", "asks": "prices", "own.1.size": "91x91", "own.1.price": "250"}
    reply = maker.client.post("/sizes", data=sent)
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "The order" in page.with_id("mistakes").text
    assert page.typed().items() >= sent.items()


def test_nothing_is_saved_while_something_is_to_be_put_right(maker: Maker) -> None:
    page = ask(maker, "/sizes/workbook", own__1__size="wide")
    assert maker.status == 422
    assert "cannot be read as a size" in page.said_of("own.1.size")
