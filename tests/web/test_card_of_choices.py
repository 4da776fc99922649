"""The card of choices: ticked on Sizes or among calmer stripings, shown, and taken to the order."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.workshop.exchange import ExchangeRate
from quoting.web.sizes.size_travel import size_key
from quoting.wording import speech_of
from tests.examples import TODAY, sample_workshop
from tests.web.asked_sizes import SIX, compare
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import Maker, maker_in
from tests.web.making_pages import SIZE, agree
from tests.web.pages import Node, Page
from tests.web.test_calmer_page import LOUD, QUOTE, loud_form

SAY = speech_of(sample_workshop())
KEYS = [size_key(size) for size in SIX]
EURO = {"EUR": ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY)}


def post(maker: Maker, address: str, fields: dict[str, object]) -> Page:
    reply = maker.client.post(address, data=fields)
    maker.status = reply.status_code
    return Page(reply.text)


def of_sizes(maker: Maker, *keys: str, **typed: str) -> Page:
    """Tick sizes for a card, type, and press its button."""
    fields = maker.open("/sizes").typed() | {n.replace("__", "."): t for n, t in typed.items()}
    return post(maker, "/sizes/card", {**fields, "choice": list(keys)})


def of_stripings(maker: Maker, *numbers: str, **typed: str) -> Page:
    """Tick stripings for a card, and press its button."""
    return post(maker, "/calmer/card", {**loud_form(maker), "choice": list(numbers), **typed})


def forms(page: Page) -> list[tuple[str, dict[str, str]]]:
    """Return the text of each form's first button, and what the form sends."""
    found = []
    for form in page.root.all("form"):
        button = next(iter(form.all("button")))
        inputs = (node.attributes for node in form.all("input"))
        found.append((button.text, {one["name"] or "": one["value"] or "" for one in inputs}))
    return found


def totals(page: Page) -> list[str]:
    """Return the totals of the card."""
    rows: Iterator[Node] = page.root.all(lambda n: n.attributes.get("class") == "total")
    return [next(iter(row.all("td"))).text for row in rows]


def test_each_size_on_a_card_has_its_own_full_quote(maker: Maker) -> None:
    page = of_sizes(maker, KEYS[0], KEYS[2], KEYS[3])
    quotes = [each.quote for each in compare().sizes]
    assert maker.status == 200
    assert totals(page) == [SAY.money(quotes[n].price.total) for n in (0, 2, 3)]
    for n in (0, 2, 3):
        assert SAY.day(quotes[n].ready_by).split()[0] in page.root.text
    assert "This is a choice and no quote yet." in page.root.text
    assert page.root.text.count(SAY.day(quotes[0].valid_until)) == 1
    assert len(list(page.root.all("svg"))) == 3 + len(quotes[0].plan.rows_by_colour)


def test_the_maker_learns_from_it_nothing_that_is_hers_alone(maker: Maker) -> None:
    text = of_sizes(maker, KEYS[0], KEYS[2]).root.text
    assert not [word for word in ("Ends", "earns", "Hours", "Cost") if word in text]


def test_what_the_buyer_chooses_becomes_the_order(maker: Maker) -> None:
    page = of_sizes(maker, KEYS[0], KEYS[2])
    (_, alone), (first, _), (second, sent) = forms(page)
    assert first.startswith("Take A, ")
    assert second.startswith("Take B, ")
    table = post(maker, "/sizes/take", dict(sent))
    assert table.typed()["blanket.width"] == "70 cm"
    assert table.typed()["order.buyer"] == "Rosalind Quill"
    assert "choice" in alone


def test_the_card_alone_is_the_buyers_page(maker: Maker) -> None:
    page = of_sizes(maker, KEYS[0], KEYS[2], alone="page")
    assert not list(page.root.all("form"))
    assert "A choice for Rosalind Quill" in page.root.text


@pytest.mark.parametrize(
    ("ticks", "words"),
    [
        ([], "tick two or three sizes"),
        (KEYS[:1], "tick two or three sizes"),
        ([KEYS[0], KEYS[0]], "tick two or three sizes"),
        (KEYS[:4], "room for three sizes"),
        ([KEYS[0], "5.0x5.0cm"], "not all can be made now"),
        (["<b>", "x" * 5000, KEYS[0]], "not all can be made now"),
    ],
)
def test_ticks_that_make_no_card_are_told_beside_and_all_is_kept(
    maker: Maker, ticks: list[str], words: str
) -> None:
    page = of_sizes(maker, *ticks, own__1__size="66 x 77")
    assert maker.status == 422
    assert words in page.root.text
    assert page.typed()["own.1.size"] == "66 x 77"
    boxes = [n.attributes for n in page.root.all("input") if n.attributes.get("name") == "choice"]
    assert {b["value"] for b in boxes if "checked" in b} == set(ticks) & set(KEYS)


def test_a_tick_of_a_size_that_is_refused_is_told(maker: Maker) -> None:
    page = of_sizes(maker, KEYS[0], size_key(replace(SIX[0], width_cm=2.0)), own__1__size="2 x 90")
    assert "not all can be made now" in page.root.text


def test_at_given_prices_the_card_has_those(maker: Maker) -> None:
    prices = {"asks": "prices", "ordered__price": "240", "customary__2__price": "199"}
    page = of_sizes(maker, *[KEYS[0], size_key(SIX[2])], **prices)
    assert totals(page) == ["£245.00", "£204.00"]


def test_ticks_stay_while_one_types(maker: Maker) -> None:
    fields = maker.open("/sizes").typed()
    page = post(maker, "/sizes/answer", {**fields, "choice": [KEYS[1]]})
    boxes = [n.attributes for n in page.root.all("input") if n.attributes.get("name") == "choice"]
    assert [box["value"] for box in boxes if "checked" in box] == [KEYS[1]]
    assert len(boxes) == len(KEYS)


def test_one_size_alone_has_nothing_to_choose_from(maker: Maker) -> None:
    fields = maker.open("/sizes").typed()
    one = {n: t for n, t in fields.items() if not n.endswith(".take") or n == "ordered.take"}
    page = post(maker, "/sizes", dict(one))
    assert "Card of choices" not in page.root.text


def test_an_order_that_is_not_whole_is_put_right_before_a_buyer_sees_it(maker: Maker) -> None:
    fields = maker.open("/").typed() | {"order.title": ""}
    sizes = post(maker, "/sizes/of-order", dict(fields))
    page = post(maker, "/sizes/card", {**sizes.typed(), "choice": KEYS[:2]})
    assert maker.status == 422
    said = [n.text for n in page.root.all(lambda n: n.attributes.get("role") == "alert")]
    assert said == ["Not given yet: title; compared with “Blanket” meanwhile."]


def test_an_order_that_cannot_be_read_makes_no_card(maker: Maker) -> None:
    of_sizes(maker, KEYS[0], order_file="nonsense")
    assert maker.status == 422


def test_a_buyer_who_pays_in_another_currency_is_told_both_totals() -> None:
    maker = maker_in(sample_workshop(exchange=EURO))
    sizes = maker.send("/sizes/of-order", order__pays_in="EUR")
    page = post(maker, "/sizes/card", {**sizes.typed(), "choice": [KEYS[0], KEYS[2]]})
    assert page.root.text.count("Total in EUR") == 2


def test_stripings_come_on_a_card_and_to_the_order(maker: Maker) -> None:
    page = of_stripings(maker, "0", "1")
    calmer = calmer_stripes(QUOTE, today=TODAY)[0].quote
    assert totals(page) == [SAY.money(q.price.total) for q in (QUOTE, calmer)]
    *_, (button, sent) = forms(page)
    assert button.startswith("Take B, ")
    assert "choice" not in sent
    table = post(maker, "/", dict(sent))
    assert int(table.figure("Ends to weave")) == calmer.estimate.ends
    assert table.typed()["order.buyer"] == LOUD.buyer


@pytest.mark.parametrize(
    ("ticks", "words"),
    [
        ([], "tick two or three stripings"),
        (["0", "1", "2", "3"], "room for three stripings"),
        (["0", "17"], "not all can be made now"),
    ],
)
def test_stripings_that_make_no_card_are_told_on_their_page(
    maker: Maker, ticks: list[str], words: str
) -> None:
    page = of_stripings(maker, *ticks)
    assert maker.status == 422
    assert words in page.root.text
    assert "Fewer ends" in page.headings
    boxes = [n.attributes for n in page.root.all("input") if n.attributes.get("name") == "choice"]
    assert {b["value"] for b in boxes if "checked" in b} == set(ticks) - {"17"}


def test_an_order_that_is_wrong_comes_back_to_the_worktable(maker: Maker) -> None:
    of_stripings(maker, "0", "1", **{"blanket.width": "?"})
    assert maker.status == 422


@pytest.mark.parametrize("address", ["/sizes/card", "/calmer/card"])
def test_an_address_that_is_opened_anew_leads_on(maker: Maker, address: str) -> None:
    assert maker.client.get(address).status_code == 302


@pytest.fixture
def keeper(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose order waits behind another that was agreed."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        agree(maker)
        yield maker


def test_with_a_book_days_count_what_is_agreed_and_the_choice_is_kept(keeper: BookMaker) -> None:
    address = keeper.begin(**SIZE, order__title="Throw")
    behind = keeper.open(address).figure("Ready by")
    sizes = post(keeper, "/sizes/of-order", dict(keeper.open(address).typed()))
    page = post(keeper, "/sizes/card", {**sizes.typed(), "choice": [KEYS[0], KEYS[2]]})
    assert behind.split()[0] in page.root.text
    *_, (_, sent) = forms(page)
    post(keeper, "/sizes/take", dict(sent))
    assert keeper.open(address).typed()["blanket.width"] == "70 cm"
    assert keeper.open(address).typed()["order.title"] == "Throw"
