"""The rest of the Sizes page by its headings: yarn left, savings, buttons, and what is asked."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.weighing.budget import within_budget
from quoting.wording import change_words
from tests.examples import TODAY, sample_workshop
from tests.web.asked_sizes import ORDERED, SAY, SIX, ask, compare, words
from tests.web.conftest import ORDER, Maker


def test_yarn_left_stands_under_its_heading_and_the_orders_own_size_is_marked(maker: Maker) -> None:
    head, *rows = maker.open("/sizes").table("Yarn left, m")
    at = head.index("Yarn left, m")
    left = [SAY.yarn_length(s.quote.estimate.metres_left) for s in compare().sizes]
    assert [row[at] for row in rows] == [length.partition("\u00a0")[0] for length in left]
    assert [row[0] for row in rows if row[0].endswith("as ordered")] == [f"{ORDERED} as ordered"]


def test_each_size_has_a_button_that_takes_it(maker: Maker) -> None:
    buttons = {
        b.attributes["aria-label"]: b.attributes
        for b in maker.open("/sizes").root.all("button")
        if b.attributes.get("name") == "take"
    }
    assert list(buttons) == [f"Take {size} to the order" for size in SIX]
    values = [button["value"] for button in buttons.values()]
    assert values == [f"{s.width_cm!r}x{s.height_cm!r}cm" for s in SIX]
    assert {button["formaction"] for button in buttons.values()} == {"/sizes/take"}


def test_what_a_change_saves_stands_under_its_headings_with_a_button(maker: Maker) -> None:
    page = ask(maker, budget="250")
    head, *rows = page.table("Takes off, GBP")
    assert head[:5] == ["Change", "Takes off, GBP", "The buyer pays then", "Hours", "Ends"]
    found = within_budget(ORDER, sample_workshop(), SIX, budget=Decimal(250), today=TODAY)
    assert [row[:5] for row in rows] == [
        [
            change_words(saving, SAY),
            SAY.bare_money(saving.saved),
            SAY.bare_money(saving.quote.price.total),
            words(SAY.hours(saving.quote.estimate.hours.total)),
            str(saving.quote.estimate.ends),
        ]
        for saving in found.savings
    ]
    taken = [
        b.attributes["value"]
        for b in page.root.all("button")
        if b.attributes.get("aria-label", "").startswith("Take over: ")
    ]
    assert taken == [saving.change.value for saving in found.savings]


def test_what_could_change_is_shown_also_where_no_size_fits_the_budget(maker: Maker) -> None:
    assert len(ask(maker, budget="6").table("Takes off, GBP")) > 1


def test_the_size_that_the_changes_are_for_is_the_orders_own(maker: Maker) -> None:
    text = ask(maker, budget="250").with_id("answer").text
    assert words(f"for {SAY.size(80, 100)} at your target") in text


def test_the_form_is_sent_to_its_own_places(maker: Maker) -> None:
    form = maker.open("/sizes").with_id("order")
    assert form.attributes["action"] == "/sizes"
    sent = {b.text: b.attributes.get("formaction", "") for b in form.all("button")}
    assert sent == {
        "Compare": "",
        "Add a size": "",
        "Save the comparison as a spreadsheet": "/sizes/workbook",
        "Back to the order": "/sizes/take",
    }


def test_of_the_two_questions_the_one_that_was_asked_is_chosen(maker: Maker) -> None:
    for asks in ("target", "prices"):
        page = ask(maker, asks=asks)
        chosen = [
            n.attributes["value"]
            for n in page.with_id("order").all("input")
            if n.attributes.get("type") == "radio" and "checked" in n.attributes
        ]
        assert chosen == [asks]


def test_sizes_say_where_they_come_from_and_the_own_one_stands_alone(maker: Maker) -> None:
    form = maker.open("/sizes").with_id("order")
    legends = [next(f.all("legend")).text for f in form.all("fieldset")]
    assert legends == [
        "What do you ask?",
        "The order’s own size",
        "Other customary sizes",
        "Sizes of my own",
        "Budget",
    ]
    ticks = [n for n in form.all("input") if n.attributes.get("type") == "checkbox"]
    ticked = [n.attributes["name"] for n in ticks if "checked" in n.attributes]
    assert len(ticked) == len(SIX)
    assert ticked[0] == "ordered.take"
    prices = [n.attributes.get("aria-label", "") for n in form.all("input")]
    assert f"Price of {ORDERED}, GBP" in prices
    assert "Own size 1" in prices
    assert "Price of own size 1, GBP" in prices


def test_figures_of_one_blanket_are_not_said_to_be_of_several(maker: Maker) -> None:
    assert "together" not in maker.open("/sizes").with_id("answer").text
