"""A little larger or smaller: the next blankets beside the order as it is, and taken over."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.order.order import Terms
from quoting.core.quote.quote import quote_order
from quoting.core.weighing.closing import closing_of
from quoting.core.weighing.neighbours import neighbours
from quoting.core.workshop.selling import Target
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import order_text
from quoting.wording import closed_words, neighbour_words, speech_of
from tests.examples import TODAY, sample_design, sample_workshop, section
from tests.web.book_pages import maker_with_book
from tests.web.conftest import ORDER, Maker
from tests.web.pages import Node, Page

SAY = speech_of(sample_workshop())
QUOTE = quote_order(ORDER, sample_workshop(), today=TODAY)
NEAR = neighbours(QUOTE, today=TODAY)
LONGER = "One repeat of the stripes more"


def choices(page: Page) -> dict[str, Node]:
    """Return what there is to choose from, by name."""
    (found,) = page.root.all(lambda n: n.attributes.get("class") == "near")
    return {next(iter(node.all("h2"))).text: node for node in found.all("li")}


def form_of(node: Node) -> dict[str, str]:
    """Return what the button of a choice sends."""
    return {one.attributes["name"]: one.attributes["value"] for one in node.all("input")}


def flat(text: str) -> str:
    return " ".join(text.split())


def test_the_worktable_leads_to_it(maker: Maker) -> None:
    buttons = [button.text for button in maker.open().root.all("button")]
    assert "A little larger or smaller…" in buttons


def test_each_choice_says_its_counts_how_far_it_is_off_and_what_it_takes(maker: Maker) -> None:
    shown = choices(maker.send("/near"))
    assert list(shown) == ["As it is", *(neighbour_words(each) for each in NEAR)]
    asked = (QUOTE, closing_of(QUOTE))
    told = [asked, *((each.quote, each.closing) for each in NEAR)]
    for node, (quote, closing) in zip(shown.values(), told, strict=True):
        assert flat(closed_words(quote, closing, SAY)) in node.text
        assert flat(SAY.size(quote.plan.width_cm, quote.plan.height_cm)) in node.text
        assert f"Buyer pays {SAY.money(quote.price.total)}" in node.text
        assert flat(f"Hours {SAY.hours(quote.estimate.hours.total)}") in node.text
        assert f"Ends {quote.estimate.ends}" in node.text
        assert "An hour earns" not in node.text


@pytest.mark.parametrize("number", range(len(NEAR)))
def test_what_is_taken_is_the_blanket_that_was_shown(maker: Maker, number: int) -> None:
    """The size that it asks for is written to a hundredth, which closes on the same counts."""
    chosen = NEAR[number]
    sent = form_of(choices(maker.send("/near"))[neighbour_words(chosen)])
    table = Page(maker.client.post("/", data=sent).text)
    assert table.figure("Price") == SAY.money(chosen.quote.price.price)
    assert flat(SAY.size(chosen.quote.plan.width_cm, chosen.quote.plan.height_cm)) in flat(
        table.root.text
    )


def test_what_is_typed_stays_but_for_what_the_choice_changes(maker: Maker) -> None:
    page = maker.send("/near", order__buyer="Maud", blanket__width="31 1/2 in")
    table = Page(maker.client.post("/", data=form_of(choices(page)[LONGER])).text).typed()
    assert table["order.buyer"] == "Maud"
    assert table["blanket.width"] == "31 1/2 in"
    assert table["blanket.height"] != maker.open().typed()["blanket.height"]


def test_as_it_is_can_be_kept_to_the_letter(maker: Maker) -> None:
    before = maker.open().typed()
    sent = form_of(choices(maker.send("/near"))["As it is"])
    assert sent == before | {"csrf_token": sent["csrf_token"]}


def test_own_counts_are_taken_as_own_counts(maker: Maker) -> None:
    own = sample_design(sections=(section("teal", "oat", repeats=20),), stitches=90)
    maker.give(order_text(replace(ORDER, design=own), Vocabulary.US))
    page = maker.send("/near", blanket__stitches="90")
    sent = form_of(choices(page)["One stitch more across"])
    assert sent["blanket.stitches"] == "91"


def test_at_a_given_price_it_says_what_an_hour_of_each_earns(maker: Maker) -> None:
    given = replace(ORDER, terms=Terms(target=Target(given=Decimal(300))))
    quote = quote_order(given, sample_workshop(), today=TODAY)
    shown = choices(maker.send("/near", price_by="given", price__given="300"))
    for each in neighbours(quote, today=TODAY):
        earned = SAY.money(each.quote.price.earned_per_hour)
        assert f"An hour earns {earned}" in shown[neighbour_words(each)].text


def test_several_alike_are_told_together(maker: Maker) -> None:
    page = maker.send("/near", order__quantity="3")
    assert "Money, hours and ends are those of all 3." in page.root.text
    three = quote_order(replace(ORDER, quantity=3), sample_workshop(), today=TODAY)
    assert SAY.money(three.price.total) in choices(page)["As it is"].text


def test_what_cannot_be_read_leads_to_the_worktable(maker: Maker) -> None:
    page = maker.send("/near", blanket__width="wide")
    assert maker.status == 422
    assert page.said_of("blanket.width")


def test_whoever_opens_the_address_comes_to_the_order(maker: Maker) -> None:
    assert maker.client.get("/near").location == "/"


def test_an_order_too_large_to_vary_has_no_way_to_it_and_is_refused_in_words(maker: Maker) -> None:
    large = {"blanket__height": "1000 cm", "order__quantity": "30"}
    page = maker.send("/", **large)
    assert "A little larger or smaller…" not in [b.text for b in page.root.all("button")]
    maker.send("/near", **large)
    assert maker.status == 422


def test_a_choice_is_saved_in_the_order_of_a_book(tmp_path: Path) -> None:
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as book_maker:
        address = book_maker.begin(order__title="Cot", blanket__width="80", blanket__height="100")
        fields = book_maker.open(address).typed()
        page = Page(book_maker.client.post("/near", data=fields).text)
        names = list(choices(page))
        wider = next(name for name in names if name.endswith("more across"))
        sent = form_of(choices(page)[wider])
        assert sent["kept"]
        shown = Page(book_maker.client.post("/", data=sent).text)
        width = shown.typed()["blanket.width"]
        assert width != "80"
        assert book_maker.open(address).typed()["blanket.width"] == width
