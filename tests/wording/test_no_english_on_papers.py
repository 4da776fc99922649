"""Nor is there an English word on what comes after the quote, or on what is chosen from before."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from exports.papers.choices import card_of
from exports.papers.message import paper_text
from exports.papers.pdf import paper_pdf
from quoting.core.papers.batch import BatchAsked, BatchRecord, batch_of
from quoting.core.papers.bill import BillAsked, bill_of
from quoting.core.papers.receipt import receipt_of
from quoting.core.papers.series import PaperFacts, cancelling, numbered
from quoting.core.quote.offer import Offer, OfferedYarn, offer_of
from quoting.core.workshop.selling import Deposit, RestDue, Tax, TaxShown
from quoting.core.workshop.workshop import Workshop
from quoting.web.app import create_app
from quoting.web.papers.showing import paper_page
from quoting.web.shop import open_shop
from quoting.wording.paper import Paper
from quoting.wording.papers import OrderPaper, order_paper
from tests.core.making.logs import DAY, log, paid
from tests.examples import TODAY, sample_design, sample_quote, sample_workshop
from tests.papers.reading import words_of
from tests.papers.test_names import NOWHERE
from tests.programs import require_package
from tests.wording.shown import Shown
from tests.wording.test_no_english import (
    ENGLISH,
    EURO,
    LANGUAGES,
    order_for,
    source_sentences,
    without_names,
    workshop_for,
)

LATER = date(2027, 1, 4)
TAXED = Tax(registered=True, rate=0.2, shown=TaxShown.ADDED)
WITHIN = replace(TAXED, shown=TaxShown.INCLUDED)


def paid_in_three(language: str, rest_due: RestDue, **changes: object) -> Workshop:
    """Return a workshop that is paid at the start, at half and at the end."""
    terms = replace(
        sample_workshop().pricing, deposit=Deposit(share=0.3), at_half=0.3, rest_due=rest_due
    )
    return workshop_for(language, pricing=terms, exchange={"EUR": EURO}, **changes)


def offers(language: str) -> Iterator[Offer]:
    """Yield offers whose bills between them say what bills say."""
    order = order_for(language)
    several, abroad = replace(order, quantity=3), replace(order, pays_in="EUR")
    at_the_end = paid_in_three(language, RestDue.ON_DELIVERY, tax=WITHIN, words_in=())
    at_once = replace(sample_workshop().pricing, deposit=None)
    yield offer_of(sample_quote(order, paid_in_three(language, RestDue.BEFORE_SENDING, tax=TAXED)))
    yield offer_of(sample_quote(several, at_the_end))
    yield offer_of(sample_quote(abroad, at_the_end))
    yield offer_of(sample_quote(order, workshop_for(language, pricing=at_once)))


def bills_and_receipts(offer: Offer) -> Iterator[PaperFacts]:
    """Yield what is written for payments as they come, the first with nothing paid."""
    currency = offer.rows[-1].currency
    entries = log(paid("60", currency), paid("5", currency), paid("-10", currency))
    yield bill_of(offer, (), BillAsked(), day=DAY)
    bill = bill_of(offer, entries, BillAsked(pay_by=LATER), day=DAY)
    yield replace(bill, follows="2026-001")
    yield receipt_of(offer, entries, 1, day=DAY)
    yield receipt_of(replace(offer, rows=offer.rows[:3]), entries, 2, day=DAY)


def records(offer: Offer) -> Iterator[BatchRecord]:
    """Yield the records of blankets that were measured, and of some that were not."""
    planned = BatchAsked(finished=DAY)
    measured = replace(planned, width_cm=80.5, height_cm=99.0, weight_g=612.0)
    unknown = replace(offer, yarns=(OfferedYarn(name="moor aran", fibre=""),))
    for sold, asked in ((offer, measured), (unknown, planned)):
        yield batch_of(sold, (), {}, asked, makers_locale="en_GB", day=DAY)


def order_papers(language: str) -> Iterator[Paper]:
    """Yield all kinds of papers of orders, and those that cancel them."""
    for offer in offers(language):
        for facts in bills_and_receipts(offer):
            kind = OrderPaper(type(facts).__name__.lower())
            made = numbered(facts, "2026-002", [])
            yield order_paper(kind, made)
            yield order_paper(kind, cancelling(made, "2026-003", LATER))
        for record in records(offer):
            for kind in (OrderPaper.CARE_CARD, OrderPaper.LABEL):
                yield order_paper(kind, replace(record, head=replace(record.head, number="7")))


def cards(language: str) -> Iterator[Paper]:
    """Yield a card of two and one of three, for a buyer who is named and for one who is not."""
    order, shop = order_for(language), workshop_for(language)
    sizes = (order.design, sample_design(width_cm=120), sample_design(stitch="dc", border=()))
    choices = [sample_quote(replace(order, design=design), shop) for design in sizes]
    yield card_of(choices[:2])
    nameless = replace(order, buyer="", for_baby=False, extras=())
    yield card_of([sample_quote(replace(nameless, design=design), shop) for design in sizes])


def told(paper: Paper) -> str:
    """Return what a paper says as a page, what is read aloud among it, and as a message."""
    return without_names("\n".join([*Shown(paper_page(paper)).said, paper_text(paper)]))


@cache
def papers(language: str) -> tuple[str, ...]:
    with create_app(open_shop(sample_workshop(), today=lambda: TODAY)).test_request_context():
        return tuple(told(paper) for paper in (*order_papers(language), *cards(language)))


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_english_word_is_on_a_paper(language: str) -> None:
    assert [found for paper in papers(language) if (found := ENGLISH.findall(paper))] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_sentence_of_the_source_is_on_a_paper(language: str) -> None:
    texts = source_sentences()
    assert [text for text in texts for paper in papers(language) if text in paper] == []


def test_the_english_of_each_paper_would_be_found() -> None:
    assert all(ENGLISH.search(paper) for paper in papers("en_GB"))


@pytest.mark.parametrize("language", LANGUAGES)
def test_what_a_pdf_says_of_letters_that_it_lacks_is_not_in_english(language: str) -> None:
    require_package("typst")
    paper = replace(next(order_papers(language)), title=f"Moor{NOWHERE}land")
    words = words_of(paper_pdf(paper))
    assert "\ufffd" in words
    assert ENGLISH.findall(without_names(words)) == []
    assert [text for text in source_sentences() if text in words] == []
