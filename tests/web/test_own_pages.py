"""Pages of the workshop: saved, refused, changed line by line, and by two at once."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from types import MappingProxyType

import pytest

from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.store.order_content import OrderContent
from quoting.store.orders import create_order
from tests.examples import sample_order, sample_workshop
from tests.store.given import put_at
from tests.web.book_pages import BEGINNING
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Page


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, sample_workshop()) as someone:
        yield someone


def typed_in(page: Page) -> dict[str, str]:
    """Return what stands in the fields of a page."""
    return {name: text for name, text in page.typed("own").items() if name != "csrf_token"}


def test_what_is_saved_is_the_next_version_and_says_so(maker: OwnMaker) -> None:
    maker.open("/workshop")
    page = maker.press("/workshop", pay__making_per_hour="15.50")
    assert (maker.status, maker.version) == (200, 2)
    assert str(maker.workshop.pay.making_per_hour) == "15.50"
    assert "Saved." in page.with_id("main").text


def test_mistakes_stand_beside_their_fields_and_everything_typed_is_kept(maker: OwnMaker) -> None:
    maker.open("/workshop")
    page = maker.press("/workshop", pay__making_per_hour="lots", workshop__name="Hollin Edge")
    assert (maker.status, maker.version) == (422, 1)
    assert page.said_of("pay.making_per_hour")
    typed = page.typed("own")
    assert (typed["pay.making_per_hour"], typed["workshop.name"]) == ("lots", "Hollin Edge")
    links = [a for a in page.root.all("a") if a.attributes["href"] == "#pay.making_per_hour"]
    assert links[0].text == "Pay for an hour of making"


def test_a_mistake_of_a_colour_stands_at_its_line(maker: OwnMaker) -> None:
    maker.open("/yarn")
    page = maker.press("/yarn", yarns__1__colours__2__value="teal")
    assert maker.status == 422
    assert "teal" in page.said_of("yarns.1.colours.2.value")
    assert page.typed("own")["yarns.1.colours.2.value"] == "teal"


def test_a_mistake_that_shows_on_another_page_is_told_with_its_name(maker: OwnMaker) -> None:
    maker.open("/yarn")
    maker.press("/yarn", "remove yarns.1")
    page = maker.press("/yarn", "add yarns")
    new = {"name": "fen", "colours__1__name": "oat", "put_ups__1__grams": "50"}
    new |= {"put_ups__1__metres": "120", "put_ups__1__price": "3"}
    page = maker.press("/yarn", **{f"yarns__1__{name}": text for name, text in new.items()})
    assert maker.status == 422
    assert "Measurements: Swatch 1, Yarn" in page.with_id("main").text


@pytest.mark.parametrize("lines", ["yarns.1.colours", "yarns.1.put_ups", "yarns"])
def test_a_removed_line_can_be_put_back_where_it_was(maker: OwnMaker, lines: str) -> None:
    before = typed_in(maker.open("/yarn"))
    assert typed_in(maker.press("/yarn", f"remove {lines}.1")) != before
    assert maker.version == 1, "nothing is kept until it is saved"
    assert typed_in(maker.press("/yarn", "back 1")) == before


def test_a_removed_colour_is_put_back_into_its_own_yarn_when_that_has_moved(
    maker: OwnMaker,
) -> None:
    maker.open("/yarn")
    maker.press("/yarn", "remove yarns.1.colours.1")
    maker.press("/yarn", "add yarns")
    maker.press("/yarn", "down yarns.1")
    back = maker.press("/yarn", "back 1").typed("own")
    assert back["yarns.2.colours.1.name"] == "oat"
    assert back["yarns.1.colours.1.name"] == ""


def test_lines_are_moved_up_and_down(maker: OwnMaker) -> None:
    maker.open("/yarn")
    moved = maker.press("/yarn", "down yarns.1.colours.1").typed("own")
    assert [moved[f"yarns.1.colours.{n}.name"] for n in (1, 2)] == ["teal", "oat"]


@pytest.mark.parametrize(
    "asked", ["back 7", "remove yarns.99", "up yarns.1", "back one", "add yarns.1.colours.x y"]
)
def test_a_button_that_cannot_be_meant_loses_nothing(maker: OwnMaker, asked: str) -> None:
    before = typed_in(maker.open("/yarn"))
    maker.press("/yarn", asked)
    assert (maker.status, typed_in(maker.page)) == (200, before)


@pytest.mark.parametrize("hidden", ["", "[", "[1]", '["yarns", -1, []]', '["x", 0, [["a", "b"]]]'])
def test_what_nobody_removed_is_not_put_back(maker: OwnMaker, hidden: str) -> None:
    maker.open("/yarn")
    page = maker.press("/yarn", "up yarns.1", removed=hidden)
    assert not [n for n in page.root.all("ul") if n.attributes.get("class") == "removed"]


def test_a_page_changed_elsewhere_is_told_and_what_was_typed_is_kept(maker: OwnMaker) -> None:
    mine = maker.open("/workshop")
    maker.press("/workshop", workshop__name="Hollin Edge")
    maker.page = mine
    page = maker.press("/workshop", workshop__hours_per_week="20")
    assert (maker.status, maker.version) == (422, 2)
    assert "Now kept are: Name: Hollin Edge" in page.with_id("main").text
    assert page.typed("own")["workshop.hours_per_week"] == "20"
    maker.press("/workshop")
    assert (maker.status, maker.version) == (200, 3)
    assert (maker.workshop.name, maker.workshop.hours_per_week) == ("Ottermoor Blankets", 20)


def test_another_page_changed_meanwhile_is_no_clash(maker: OwnMaker) -> None:
    mine = maker.open("/workshop")
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__fibre="merino")
    maker.page = mine
    maker.press("/workshop", workshop__name="Hollin Edge")
    assert (maker.status, maker.workshop.name) == (200, "Hollin Edge")
    assert maker.workshop.yarns[0].fibre == "merino"


def test_what_goes_by_a_name_follows_it(maker: OwnMaker) -> None:
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__name="fell aran", yarns__1__colours__1__name="chalk")
    assert maker.status == 200
    assert {swatch.yarn for swatch in maker.workshop.swatches} == {"fell aran"}
    assert maker.workshop.yarns[0].stock[0].colour == "chalk"


def order_in(maker: OwnMaker, order: Order | None) -> int:
    """Keep an order in the book, whole or still being typed."""
    typed = MappingProxyType({"blanket.yarn": ("moor aran",), "x.colour": ("oat",)})
    content = OrderContent(typed=typed, title="Cot blanket", order=order)
    return create_order(maker.book, content, now=BEGINNING).id


@pytest.mark.parametrize("order", [sample_order(), None], ids=["whole", "half typed"])
def test_what_an_open_order_uses_is_not_taken_out_in_silence(
    maker: OwnMaker, order: Order | None
) -> None:
    order_id = order_in(maker, order)
    maker.open("/yarn")
    maker.press("/yarn", "remove yarns.1.stock.1")
    maker.press("/yarn", "remove yarns.1.colours.1")
    page = maker.press("/yarn")
    assert (maker.status, maker.version) == (422, 1)
    assert "Cot blanket : moor aran, oat" in page.with_id("main").text
    put_at(maker.book, order_id, Stage.HANDED_OVER)
    maker.press("/yarn")
    assert (maker.status, maker.version) == (200, 2)


def test_words_of_her_own_that_are_too_long_are_told_with_their_limit(maker: OwnMaker) -> None:
    long = "A day at the sea. " * 600
    maker.open("/workshop")
    maker.press("/workshop", workshop__greeting=long)
    assert maker.status == 422
    said = maker.page.said_of("workshop.greeting")
    assert said == "This is too long, 10,799 characters; at most 10,000 will do."
    assert maker.page.typed("own")["workshop.greeting"] == long
    maker.press("/workshop", workshop__greeting="Good day,\r\n\r\n  dear buyer.\r\n")
    assert maker.workshop.own_words.greeting == "Good day,\n\n  dear buyer."


def test_the_days_of_swatches_and_timings_are_told(maker: OwnMaker) -> None:
    maker.open("/measurements")
    maker.press("/measurements", swatches__1__day="2026-11-02", timings__1__day="2026-11-03")
    follows = maker.page.with_id("follows").text
    assert "Day 2 November 2026" in follows
    assert "the last on 3 November 2026" in follows


def test_the_hook_of_a_label_is_told(maker: OwnMaker) -> None:
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__hook_mm="5.5")
    assert "hook on the label: 5.5 mm" in maker.page.root.text


def test_pages_speak_as_the_workshop_does_now_and_not_as_when_they_were_first_opened(
    maker: OwnMaker,
) -> None:
    """Words in a template that is compiled once are not those of the workshop of that moment."""
    assert "Colours" in maker.open("/yarn").headings
    maker.open("/workshop")
    maker.press("/workshop", workshop__locale="en_US")
    assert maker.workshop.locale == "en_US"
    assert "Colors" in maker.open("/yarn").headings
