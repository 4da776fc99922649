"""The language of a quote has a catalogue, or is refused; a book opens all the same."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from quoting.core.ground.errors import Mistake, Refused
from quoting.places import catalogue_languages, demo_order, demo_workshop
from quoting.schema import load_order_text, load_workshop, load_workshop_text
from quoting.schema.notation import RECORD
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_order
from quoting.wording import mistake_sentence, speech_of
from tests.examples import sample_order, sample_workshop
from tests.schema.notations import TYPED

SHOP = load_workshop(demo_workshop())
NO_LANGUAGES = [
    "xx",
    "English",
    "de_",
    "d",
    "",
    "../de",
    "de_DE_AT",
    "tlh",
    "de\u202e",
    "<b>",
    "日本",
]


def order_in(language: str) -> str:
    text = demo_order().read_text("utf-8")
    return text.replace("[order]\n", f"[order]\nlanguage = '{language}'\n")


def refused(read: Callable[[], object]) -> Mistake:
    with pytest.raises(Refused) as refusal:
        read()
    (mistake,) = refusal.value.mistakes
    return mistake


@pytest.mark.parametrize("language", ["en", "en_US", "de", "de_AT", "de-CH", "DE", "de_Latn_AT"])
def test_a_language_with_a_catalogue_is_taken_with_any_country(language: str) -> None:
    assert load_order_text(order_in(language), SHOP).language == language


@pytest.mark.parametrize("language", NO_LANGUAGES)
def test_any_other_is_refused_at_its_place_with_those_that_there_are(language: str) -> None:
    mistake = refused(lambda: load_order_text(order_in(language), SHOP))
    assert (mistake.path, mistake.code) == ("order.language", "no-catalogue")
    assert mistake.facts["known"] == ("en", *catalogue_languages())


def test_the_sentence_names_each_of_them() -> None:
    mistake = refused(lambda: load_order_text(order_in("tlh"), SHOP))
    said = mistake_sentence(mistake, speech_of(SHOP))
    assert all(language in said for language in ("tlh", "en", *catalogue_languages()))


def test_a_form_is_read_by_the_same_rule() -> None:
    sent = ORDER.write(sample_order(language="de_AT"), TYPED["English"])
    head = sent["order"]
    assert isinstance(head, dict)
    assert read_order(sent, sample_workshop(), TYPED["English"]).language == "de_AT"
    wrong = sent | {"order": head | {"language": "tlh"}}
    mistake = refused(lambda: read_order(wrong, sample_workshop(), TYPED["English"]))
    assert (mistake.path, mistake.code) == ("order.language", "no-catalogue")


def test_a_record_is_read_also_when_its_catalogue_was_taken_away() -> None:
    order = sample_order(language="tlh")
    assert read_order(ORDER.write(order, RECORD), sample_workshop(), RECORD) == order


def test_words_of_the_makers_are_in_such_languages_too() -> None:
    text = demo_workshop().read_text("utf-8").replace('language = "de"', 'language = "tlh"')
    mistake = refused(lambda: load_workshop_text(text))
    assert (mistake.path, mistake.code) == ("words_in.1.language", "no-catalogue")


def test_a_language_that_is_no_text_is_said_to_be_none() -> None:
    text = order_in("de").replace("'de'", "7")
    mistake = refused(lambda: load_order_text(text, SHOP))
    assert (mistake.path, mistake.code) == ("order.language", "wrong-type")
