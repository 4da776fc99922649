"""Who reads German, French, Spanish or Dutch finds no English word on what she is sent."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest

from quoting.core.order.order import Order
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import WordsIn
from quoting.core.workshop.selling import Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from quoting.web.app import create_app
from quoting.web.orders.quote_page import quote_page
from quoting.web.shop import open_shop
from quoting.wording import say_offer
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.wording.catalogues import FILES, marked, read
from tests.wording.shown import Shown

LANGUAGES = [file.stem for file in FILES]

ENGLISH = re.compile(
    r"\b(the|and|with|without|if|you|your|it|its|this|that|for|from|by|about|each|before|after|when"
    r"|will|not|which|what|row|rows|round|rounds|blanket|blankets|yarn|border|size|weight|quote"
    r"|stitches|colours|colors|price|tax|delivery|deposit|balance|until|hours|days)\b",
    re.IGNORECASE,
)
"""The commonest words, and those of the trade, that are none in these languages."""

PROPER_NAMES = ("American Academy of Pediatrics",)

OWN = {
    "de": ("Guten Tag!", "Von Hand waschen.", "Zahlung per Rechnung."),
    "es": ("¡Buenos días!", "Lavar a mano.", "Pago por transferencia."),
    "fr": ("Bonjour\u202f!", "Laver à la main.", "Paiement par virement."),
    "nl": ("Goedendag!", "Met de hand wassen.", "Betaling per overschrijving."),
}

TOLD = Documents(
    stitches=True, rows=True, yarn=True, ends=True, hours=True, size_within_cm=2.0, change_days=5
)
EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)


def workshop_for(language: str, **changes: object) -> Workshop:
    greeting, care, terms = OWN.get(language, ("–", "–", "–"))
    words = WordsIn(language=language, greeting=greeting, care=care, terms=terms)
    return replace(
        sample_workshop(), name="Ottermoor", **{"words_in": (words,), "documents": TOLD, **changes}
    )


def order_for(language: str, **changes: object) -> Order:
    return replace(sample_order(), title="Moorland", language=language, for_baby=True, **changes)


def quotes(language: str) -> Iterator[Quote]:
    """Yield quotes that between them say what quotes say."""
    for country in ("DE", "ES", "FR", "GB", "NL", "US", "SE"):
        yield sample_quote(order_for(language, deliver_to=country), workshop_for(language))
    several = order_for(language, quantity=3, wanted_by=TODAY)
    taxed = Tax(registered=True, rate=Decimal("0.2"), shown=TaxShown.ADDED)
    yield sample_quote(several, workshop_for(language, tax=taxed))
    within = replace(taxed, shown=TaxShown.INCLUDED)
    euros = workshop_for(language, tax=within, exchange={"EUR": EURO}, words_in=())
    yield sample_quote(order_for(language, pays_in="EUR"), euros)
    yield replace(sample_quote(order_for(language), workshop_for(language)), number="")


def told(quote: Quote) -> str:
    """Return what the page of a quote says, its drawing and what is read aloud among it."""
    with create_app(open_shop(quote.workshop, today=lambda: TODAY)).test_request_context():
        page = quote_page(quote)
    return without_names("\n".join(Shown(page).said))


def without_names(text: str) -> str:
    """Return a text without the names that are no words of a language."""
    for name in PROPER_NAMES:
        text = text.replace(name, "")
    return text


def source_sentences() -> list[str]:
    """Return the source's own of two words or more: one may be the same in both languages."""
    return [
        text
        for message in marked()
        for text in ([message.id] if isinstance(message.id, str) else message.id)
        if len(text.split()) > 1 and "{" not in text
    ]


@cache
def pages(language: str) -> tuple[str, ...]:
    return tuple(told(quote) for quote in quotes(language))


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_english_word_is_on_a_quote(language: str) -> None:
    assert [found for page in pages(language) if (found := ENGLISH.findall(page))] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_sentence_of_the_source_is_on_a_quote(language: str) -> None:
    sentences = source_sentences()
    assert [text for text in sentences for page in pages(language) if text in page] == []


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_no_english_word_is_in_a_translation(file: object) -> None:
    """What no quote of these says is looked through where it stands."""
    texts = [
        re.sub(r"\{\w+\}", "", text)
        for message in read(file)
        if message.id
        for text in ([message.string] if isinstance(message.string, str) else message.string)
    ]
    assert [text for text in texts if ENGLISH.search(text)] == []


def test_the_english_of_a_quote_would_be_found() -> None:
    assert len(ENGLISH.findall(told(sample_quote(order_for("en_GB"), workshop_for("en_GB"))))) > 20


@pytest.mark.parametrize("language", LANGUAGES)
def test_figures_are_the_same_in_every_language(language: str) -> None:
    english = say_offer(offer_of(sample_quote(order_for("en"), workshop_for("en"))))
    other = say_offer(offer_of(sample_quote(order_for(language), workshop_for(language))))
    assert [digits(row.amount) for row in other.rows] == [
        digits(row.amount) for row in english.rows
    ]


def digits(text: str) -> str:
    return re.sub(r"\D", "", text)
