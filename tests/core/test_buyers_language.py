"""An order's language is that of its offer, of the maker's words there, and of its cautions."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.quote.offer import Offer, offer_of
from quoting.core.workshop.own_words import MOST_WORDS, OwnWords, WordsIn, words_in
from tests.examples import sample_order, sample_quote, sample_workshop

USUAL = OwnWords(contact="hello@ottermoor.example", greeting="Good day.", care="Wash by hand.")
GERMAN = WordsIn(language="de", greeting="Guten Tag.", terms="Vorkasse.")
AUSTRIAN = WordsIn(language="de_AT", greeting="Grüß Gott.")


def offered(language: str | None, **changes: object) -> Offer:
    shop = sample_workshop(own_words=USUAL, words_in=(GERMAN,))
    return offer_of(sample_quote(sample_order(language=language, **changes), shop))


def test_without_a_language_it_is_the_workshops_and_so_are_the_words() -> None:
    offer = offered(None)
    assert (offer.locale, offer.own_words) == ("en_GB", USUAL)


def test_with_one_the_words_are_the_makers_in_it_and_as_usual_where_she_has_none() -> None:
    offer = offered("de_AT")
    assert offer.locale == "de_AT"
    assert offer.own_words == replace(USUAL, greeting="Guten Tag.", terms="Vorkasse.")
    assert offered("fr").own_words == USUAL


@pytest.mark.parametrize(
    ("language", "greeting"),
    [("de", "Guten Tag."), ("de-at", "Grüß Gott."), ("de_CH", "Guten Tag."), ("en", "Good day.")],
)
def test_words_for_a_country_go_before_those_for_its_language(language: str, greeting: str) -> None:
    assert words_in(language, USUAL, (GERMAN, AUSTRIAN)).greeting == greeting


def test_words_for_another_country_are_nearer_than_another_language() -> None:
    assert words_in("de", USUAL, (AUSTRIAN,)).greeting == "Grüß Gott."


def test_a_language_has_its_words_once_and_they_have_limits() -> None:
    with pytest.raises(Refused) as refusal:
        sample_workshop(words_in=(GERMAN, GERMAN))
    assert [(m.path, m.code) for m in refusal.value.mistakes] == [
        ("words_in.2.language", "given-twice")
    ]
    WordsIn(language="de", terms="x" * MOST_WORDS)
    with pytest.raises(Refused) as refusal:
        WordsIn(language=" ", terms="x" * (MOST_WORDS + 1))
    assert [m.path for m in refusal.value.mistakes] == ["language", "terms_of_sale"]


def test_another_language_is_another_offer_and_the_same_price() -> None:
    english, german = (sample_quote(sample_order(language=name)) for name in (None, "de"))
    assert english.number != german.number
    assert english.price == german.price


@pytest.mark.parametrize(
    ("language", "country", "advised_in"),
    [(None, None, "GB"), ("de", None, None), ("de_DE", None, "DE"), ("de", "GB", "GB")],
)
def test_whose_advice_is_told_goes_by_the_buyers_country_and_never_by_the_makers(
    language: str | None, country: str | None, advised_in: str | None
) -> None:
    (caution,) = offered(language, deliver_to=country).cautions
    assert caution.facts["advised_in"] == advised_in


def test_a_title_in_the_buyers_language_may_tell_of_a_baby() -> None:
    large = {"for_baby": False, "title": "Taufdecke"}
    shop = sample_workshop()
    design = sample_order().design
    wide = replace(design, width_cm=150.0, height_cm=180.0)
    told = [
        bool(
            offer_of(sample_quote(sample_order(design=wide, language=name, **large), shop)).cautions
        )
        for name in (None, "de")
    ]
    assert told == [False, True]


def test_a_language_is_a_short_text() -> None:
    with pytest.raises(Refused) as refusal:
        sample_order(language="d" * 81)
    assert [(m.path, m.code) for m in refusal.value.mistakes] == [("order.language", "too-long")]
