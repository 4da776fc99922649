"""Words for a quote are entered in several languages, and suggested where there are none."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from quoting.core.workshop.documents import Documents
from quoting.core.workshop.own_words import WordsIn
from tests.examples import sample_workshop
from tests.web.own_maker import OwnMaker, own_maker

CARE = "suggest workshop.care"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, sample_workshop()) as someone:
        someone.open("/workshop")
        yield someone


def suggested(maker: OwnMaker) -> set[str]:
    """Return what the buttons of the page take over."""
    buttons = (node.attributes.get("value") or "" for node in maker.page.root.all("button"))
    return {text.removeprefix("suggest ") for text in buttons if text.startswith("suggest ")}


def test_words_are_suggested_beside_blank_fields_and_are_on_no_quote(maker: OwnMaker) -> None:
    fields = {f"workshop.{key}" for key in ("greeting", "care", "terms_of_sale")}
    assert suggested(maker) == fields
    assert not any(maker.page.typed("own")[field] for field in fields)
    maker.press("/workshop")
    assert maker.workshop == sample_workshop()


def test_a_button_takes_one_over_to_be_changed_and_saves_nothing(maker: OwnMaker) -> None:
    maker.press("/workshop", CARE, workshop__name="Fen Throws")
    typed = maker.page.typed("own")
    assert typed["workshop.care"].startswith("Wash it by itself")
    assert (typed["workshop.greeting"], typed["workshop.name"]) == ("", "Fen Throws")
    assert "workshop.care" not in suggested(maker)
    assert maker.version == 1
    maker.press("/workshop")
    assert maker.workshop.own_words.care == typed["workshop.care"]


def test_what_is_typed_is_never_taken_away(maker: OwnMaker) -> None:
    maker.press("/workshop", CARE, workshop__care="Dry flat.")
    assert maker.page.typed("own")["workshop.care"] == "Dry flat."


@pytest.mark.parametrize(
    "asked",
    ["suggest", "suggest care", "suggest workshop.name", "suggest workshop.nothing", "suggest ...",
     "suggest words_in.9.care"],
)  # fmt: skip
def test_what_is_not_suggested_changes_nothing(maker: OwnMaker, asked: str) -> None:
    before = maker.page.typed("own")
    maker.press("/workshop", asked)
    assert maker.status == 200
    assert maker.page.typed("own") == before | {"csrf_token": maker.page.typed("own")["csrf_token"]}


def test_words_in_a_further_language_are_a_line_of_their_own(maker: OwnMaker) -> None:
    maker.press("/workshop", "add words_in")
    german = {"words_in__1__language": "de", "words_in__1__greeting": "Guten Tag."}
    maker.press("/workshop", **german)
    assert maker.workshop.words_in == (WordsIn(language="de", greeting="Guten Tag."),)
    assert "words_in.1.greeting" not in suggested(maker)
    maker.press("/workshop", "remove words_in.1")
    maker.press("/workshop")
    assert maker.workshop.words_in == ()


def test_a_line_without_a_language_or_with_one_twice_is_told_beside_it(maker: OwnMaker) -> None:
    for number in (1, 2):
        maker.press("/workshop", "add words_in")
        maker.press("/workshop", **{f"words_in__{number}__greeting": "Guten Tag."})
        assert maker.status == 422
        assert maker.page.said_of(f"words_in.{number}.language")
        maker.press("/workshop", "", **{f"words_in__{number}__language": "de"})
    assert "twice" in maker.page.said_of("words_in.2.language")


def test_what_a_quote_tells_is_ticked_line_by_line(maker: OwnMaker) -> None:
    typed = {"documents__ends": "yes", "documents__size_within": "1/2 in"}
    maker.press("/workshop", documents__change_days="7", **typed)
    told = Documents(ends=True, size_within_cm=1.27, change_days=7)
    assert maker.workshop == replace(sample_workshop(), documents=told)


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("size_within", "2 miles"),
        ("size_within", "0"),
        ("change_days", "1.5"),
        ("change_days", "0"),
    ],
)
def test_a_promise_that_cannot_be_read_is_told_beside_it_and_kept(
    maker: OwnMaker, field: str, text: str
) -> None:
    maker.press("/workshop", **{f"documents__{field}": text})
    assert maker.status == 422
    assert maker.page.said_of(f"documents.{field}")
    assert maker.page.typed("own")[f"documents.{field}"] == text
