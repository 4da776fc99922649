"""The first steps: from an empty book to a workshop, question by question."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from unittest.mock import patch

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.store.first_answers import kept_answers
from quoting.store.workshops import current_workshop
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Page

HERE = "/first-steps"
BEGUN = "You had begun"


@pytest.fixture
def beginner(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, None) as someone:
        yield someone


def answer(beginner: OwnMaker, do: str = "next", **typed: str) -> Page:
    return beginner.press(HERE, do, **typed)


def begin(beginner: OwnMaker) -> Page:
    beginner.open(f"{HERE}?anew=yes")
    return answer(beginner, workshop__name="Hollin Edge")


def to_the_end(beginner: OwnMaker) -> Page:
    """Answer every question that a quote needs, and skip the others."""
    begin(beginner)
    answer(
        beginner,
        yarns__1__name="fell aran",
        yarns__1__category="4",
        yarns__1__put_ups__1__grams="100",
        yarns__1__put_ups__1__metres="180 m",
        yarns__1__put_ups__1__price="5.20",
        yarns__1__colours__1__name="chalk",
    )
    answer(beginner, "skip")
    answer(beginner, "skip")
    answer(beginner, timings__1__stitch="hdc", timings__1__stitches="200", timings__1__minutes="12")
    answer(beginner, pay__making_per_hour="13", workshop__hours_per_week="15")
    return answer(beginner, "skip")


def test_from_nothing_to_a_workshop_with_what_was_answered_and_no_more(beginner: OwnMaker) -> None:
    to_the_end(beginner)
    answer(beginner, "begin")
    workshop = beginner.workshop
    assert (workshop.name, workshop.currency, workshop.hours_per_week) == ("Hollin Edge", "GBP", 15)
    assert workshop.swatches == ()
    assert workshop.minutes.weave_in_end is None
    assert workshop.timings[0].stitches == 200
    assert workshop.tax.on_delivery
    assert beginner.status == 200
    assert beginner.client.get(HERE).location == "/workshop"


def test_what_was_begun_with_can_be_quoted(beginner: OwnMaker) -> None:
    to_the_end(beginner)
    answer(beginner, "begin")
    page = beginner.press_at("/orders/new", "/orders")
    sent = page.typed() | {"blanket.width": "80", "blanket.height": "100"}
    page = beginner.see(beginner.client.post("/orders/1", data=sent))
    assert beginner.status == 200
    assert page.figure("Price").startswith("£")


def test_after_each_answer_it_says_what_a_quote_rests_on(beginner: OwnMaker) -> None:
    page = begin(beginner)
    said = page.with_id("own").text
    assert "none yet; without one nothing can be priced" in said
    answer(beginner, "skip")
    assert "not measured" in beginner.page.with_id("own").text
    page = to_the_end(beginner)
    assert "not measured: what is usual for such a yarn" in page.with_id("own").text
    assert "measured." not in page.with_id("own").text
    assert "weaving in, packing and messages are not counted yet" in page.with_id("own").text


def test_an_answer_with_a_mistake_in_it_is_nothing_that_a_quote_rests_on(
    beginner: OwnMaker,
) -> None:
    begin(beginner)
    page = answer(beginner, yarns__1__name="fell", yarns__1__put_ups__1__grams="heavy")
    assert "none yet; without one nothing can be priced" in page.with_id("own").text


def test_a_mistake_stands_beside_its_field_and_of_the_question_asked_alone(
    beginner: OwnMaker,
) -> None:
    begin(beginner)
    page = answer(beginner, yarns__1__name="fell", yarns__1__put_ups__1__grams="heavy")
    assert beginner.status == 422
    assert page.said_of("yarns.1.put_ups.1.grams")
    assert "Pay" not in page.root.text.split("to correct")[1].split("Colours")[0]
    assert page.typed("own")["yarns.1.put_ups.1.grams"] == "heavy"
    assert page.typed("own")["workshop.name"] == "Hollin Edge"


def test_what_a_quote_cannot_do_without_is_told_at_the_end(beginner: OwnMaker) -> None:
    begin(beginner)
    for _ in range(6):
        answer(beginner, "skip")
    page = answer(beginner, "begin")
    assert beginner.status == 422
    assert current_workshop(beginner.book) is None
    assert "a quote cannot do without" in page.root.text
    answer(beginner, "to yarn")
    assert "A yarn, as on its label" in beginner.page.headings


def test_usual_minutes_are_taken_knowingly_and_one_by_one(beginner: OwnMaker) -> None:
    begin(beginner)
    answer(beginner, "to minutes", minutes__pack="9")
    answer(beginner, "to minutes")
    page = answer(beginner, "usual weave_in_end", minutes__pack="9")
    assert page.typed("own")["minutes.weave_in_end"] == "2.5"
    assert page.typed("own")["minutes.join"] == ""
    page = answer(beginner, "usual all")
    assert page.typed("own")["minutes.pack"] == "9"
    assert page.typed("own")["minutes.join"] == "1.5"


@pytest.mark.parametrize(
    ("language", "currency", "units", "speaks"),
    [("en-US", "USD", "in", "US"), ("de", "EUR", "cm", "UK"), ("xx", "GBP", "cm", "UK")],
)
def test_the_first_question_offers_what_the_browser_says(
    beginner: OwnMaker, language: str, currency: str, units: str, speaks: str
) -> None:
    reply = beginner.client.get(HERE, headers={"Accept-Language": language})
    typed = Page(reply.text).typed("own")
    offered = [typed[f"workshop.{key}"] for key in ("currency", "units", "speaks")]
    assert offered == [currency, units, speaks]


def test_a_colour_is_added_and_removed(beginner: OwnMaker) -> None:
    begin(beginner)
    page = answer(beginner, "add yarns.1.colours", yarns__1__colours__1__name="chalk")
    typed = page.typed("own")
    assert typed["yarns.1.colours.2.name"] == ""
    assert typed["yarns.1.colours.1.value"] != typed["yarns.1.colours.2.value"]
    page = answer(beginner, "remove yarns.1.colours.1")
    assert page.typed("own")["yarns.1.colours.1.name"] == ""


def test_answers_from_before_a_restart_are_kept(beginner: OwnMaker) -> None:
    fields = begin(beginner).typed("own") | {"yarns.1.name": "fell", "csrf_token": "old"}
    page = beginner.see(beginner.client.post(HERE, data=fields))
    assert beginner.status == 409
    assert page.typed("own")["yarns.1.name"] == "fell"


def test_first_steps_opened_anew_go_on_with_what_was_answered(beginner: OwnMaker) -> None:
    begin(beginner)
    answer(beginner, yarns__1__name="fell", yarns__1__put_ups__1__grams="heavy")
    page = beginner.open(HERE)
    assert BEGUN in page.root.text
    assert "A yarn, as on its label" in page.headings
    assert page.typed("own")["yarns.1.put_ups.1.grams"] == "heavy"
    answer(beginner, "skip")
    page = beginner.open(HERE)
    assert "A swatch" in page.headings
    assert page.typed("own")["workshop.name"] == "Hollin Edge"


def test_what_was_answered_to_the_end_is_begun_with_from_there(beginner: OwnMaker) -> None:
    to_the_end(beginner)
    assert "To begin with" in beginner.open(HERE).headings
    answer(beginner, "begin")
    assert beginner.workshop.name == "Hollin Edge"
    assert kept_answers(beginner.book) is None


def test_who_begins_anew_loses_what_she_had_only_with_her_next_answer(beginner: OwnMaker) -> None:
    begin(beginner)
    page = beginner.open(f"{HERE}?anew=yes")
    assert page.typed("own")["workshop.name"] == ""
    assert BEGUN in beginner.open(HERE).root.text
    beginner.open(f"{HERE}?anew=yes")
    answer(beginner, workshop__name="Fell Foot")
    assert beginner.open(HERE).typed("own")["workshop.name"] == "Fell Foot"


def test_a_book_in_which_nothing_was_answered_says_nothing_of_it(beginner: OwnMaker) -> None:
    assert BEGUN not in beginner.open(HERE).root.text


def test_answers_that_the_book_does_not_take_stay_in_the_page(beginner: OwnMaker) -> None:
    beginner.open(HERE)
    locked = refuse("", MistakeCode.BOOK_LOCKED)
    with patch("quoting.web.first_steps.kept_answers.keep_answers", side_effect=locked):
        page = answer(beginner, workshop__name="Hollin Edge")
    assert "Another program has the book to itself" in page.root.text
    assert page.typed("own")["workshop.name"] == "Hollin Edge"
