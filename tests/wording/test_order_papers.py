"""The papers of an order in words: the buyer's in her notation, the maker's in hers."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from quoting.core.papers.batch import BatchAsked, BatchRecord, batch_of
from quoting.core.papers.bill import BillAsked, bill_of
from quoting.core.papers.receipt import receipt_of
from quoting.core.papers.series import PaperFacts, cancelling, numbered
from quoting.core.quote.offer import Offer, OfferedYarn, offer_of
from quoting.core.quote.offer_rows import RowCode
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import Tax, TaxShown
from quoting.wording.paper import Amounts, Facts, Listing, Paper, Words
from quoting.wording.papers import OrderPaper, order_paper
from tests.core.making.logs import DAY, log, paid, taken
from tests.core.papers.accounts import offered
from tests.examples import sample_order, sample_quote, sample_workshop

OFFER = offer_of(sample_quote())
GERMAN = replace(OFFER, locale="de_DE")


def record(offer: Offer = OFFER, *, lot: str = "", **asked: Any) -> BatchRecord:
    wish = BatchAsked(**({"finished": DAY} | asked))
    sources = {"oat": sample_order().design.source_of("oat")}
    entries = log(taken("oat", 200.5, lot=lot)) if lot else ()
    return batch_of(offer, entries, sources, wish, makers_locale="en_GB", day=DAY)


def said(paper: Paper) -> str:
    """Return all that a paper says, but for its head."""
    return " | ".join(text for block in paper.blocks for text in texts(block))


def texts(block: object) -> list[str]:
    match block:
        case Facts():
            return [block.heading, *(f"{fact.name}: {fact.text}" for fact in block.facts)]
        case Amounts():
            return [block.heading, *(f"{row.name}: {row.amount}" for row in block.rows)]
        case Listing():
            return [block.heading, " ".join(block.heads), *map(" ".join, block.rows)]
        case Words():
            return [block.heading, block.warning, *block.texts]
    raise TypeError(block)


def test_a_receipt_tells_amounts_in_the_currency_that_they_are_of() -> None:
    receipt = receipt_of(GERMAN, log(paid("1050.50", "GBP")), 1, day=DAY)
    paper = order_paper(OrderPaper.RECEIPT, receipt)
    assert "1.050,50\u00a0£" in said(paper)
    assert "1. Dezember 2026" in (paper.heading, *texts(paper.blocks[0]))


@pytest.mark.parametrize(
    ("shown", "told"),
    [(TaxShown.ADDED, "Tax, 7.5%: "), (TaxShown.INCLUDED, "Tax of 7.5% within the total: ")],
)
def test_a_bill_of_a_registered_maker_tells_rate_and_amount_of_the_tax(
    shown: TaxShown, told: str
) -> None:
    tax = Tax(registered=True, rate=0.075, shown=shown)
    offer = offer_of(sample_quote(sample_order(), sample_workshop(tax=tax)))
    assert told in said(order_paper(OrderPaper.BILL, bill_of(offer, (), BillAsked(), day=DAY)))


def test_a_bill_for_several_tells_the_price_of_each_and_what_was_paid_back() -> None:
    offer = offer_of(sample_quote(sample_order(quantity=3)))
    entries = log(paid("50"), paid("-20"))
    words = said(order_paper(OrderPaper.BILL, bill_of(offer, entries, BillAsked(), day=DAY)))
    assert "3 blankets, each £" in words
    assert "Paid back on 1 December 2026: -£20.00" in words
    assert "Paid in all: £30.00" in words
    assert "Tax" not in words


def test_a_bill_in_the_buyers_currency_tells_the_total_in_both() -> None:
    offer = offered(pays_in="EUR")
    total, abroad = (offer.row(RowCode.TOTAL, code) for code in ("GBP", "EUR"))
    assert total is not None
    assert abroad is not None
    bill = bill_of(offer, log(paid("20", "EUR")), BillAsked(), day=DAY)
    words = said(order_paper(OrderPaper.BILL, bill))
    assert f"| Total: £{total.amount}" in words
    assert f"| Total in EUR: €{abroad.amount}" in words
    assert f"To pay in all: €{abroad.amount - 20}" in words


def test_a_bill_tells_of_each_payment_when_it_is_due() -> None:
    bill = bill_of(offered(share=0.3, at_half=0.3), (), BillAsked(), day=DAY)
    words = said(order_paper(OrderPaper.BILL, bill))
    due = ("Due since you accepted: ", "Due when half of it is made: ", "Due on delivery: ")
    assert all(part in words for part in due)
    whole = bill_of(offered(share=None), (), BillAsked(), day=DAY)
    assert "For the order: £" in said(order_paper(OrderPaper.BILL, whole))


def test_a_batch_record_is_in_the_makers_notation_and_the_label_in_the_buyers() -> None:
    batch = record(GERMAN, lot="771", width_cm=80.5, height_cm=99, weight_g=612)
    kept, label = (order_paper(what, batch) for what in (OrderPaper.BATCH, OrderPaper.LABEL))
    assert "Size: 80.5 × 99\u00a0cm, measured" in said(kept)
    assert "moor aran oat 771 201\u00a0g" in said(kept)
    assert "80,5 × 99\u00a0cm" in said(label)
    assert (kept.language, label.language) == ("en", "de")


def test_what_was_not_measured_is_told_as_planned_and_roughly() -> None:
    batch = record()
    assert "cm, as planned" in said(order_paper(OrderPaper.BATCH, batch))
    assert "g, as estimated" in said(order_paper(OrderPaper.BATCH, batch))
    assert "Size: about 80 × 99\u00a0cm" in said(order_paper(OrderPaper.LABEL, batch))


def test_a_weight_that_nobody_weighed_is_told_on_the_label_as_on_the_quote() -> None:
    batch = record(replace(OFFER, weight_g=629.4))
    assert "Weight: about 630\u00a0g" in said(order_paper(OrderPaper.LABEL, batch))
    weighed = record(replace(OFFER, weight_g=629.4), weight_g=631.0)
    assert "Weight: 631\u00a0g" in said(order_paper(OrderPaper.LABEL, weighed))


@pytest.mark.parametrize(
    ("asked", "planned", "label"),
    [
        ({}, "Size: 99.8\u00a0cm across, as planned", "Size: about 100\u00a0cm across"),
        (
            {"width_cm": 101.0, "height_cm": 99.0},
            "Size: 101 × 99\u00a0cm, measured",
            "Size: 101 × 99\u00a0cm",
        ),
    ],
)
def test_a_circle_is_told_by_how_far_it_is_across_unless_it_came_out_oval(
    asked: dict[str, float], planned: str, label: str
) -> None:
    circle = replace(OFFER, width_cm=99.8, height_cm=99.8, centre=Counting.CIRCLE)
    batch = record(circle, **asked)
    assert planned in said(order_paper(OrderPaper.BATCH, batch))
    assert label in said(order_paper(OrderPaper.LABEL, batch))


def test_a_fibre_that_nobody_told_is_not_known() -> None:
    batch = replace(record(), yarns=(OfferedYarn(name="moor aran", fibre=""),))
    assert "moor aran: not known" in said(order_paper(OrderPaper.CARE_CARD, batch))


def test_care_is_told_in_her_own_words_or_as_is_usual_and_in_no_signs() -> None:
    usual = said(order_paper(OrderPaper.CARE_CARD, record()))
    assert "Care |  | Wash as the yarn’s label says" in usual
    own = order_paper(OrderPaper.CARE_CARD, replace(record(), care="By hand.\nDry flat."))
    (care,) = (block for block in own.blocks if getattr(block, "as_typed", False))
    assert texts(care) == ["Care", "", "By hand.\nDry flat."]


def test_what_the_buyer_was_warned_of_stands_on_card_and_label() -> None:
    for what in (OrderPaper.CARE_CARD, OrderPaper.LABEL):
        blocks = order_paper(what, record()).blocks
        warned = [block for block in blocks if isinstance(block, Words) and block.warning]
        assert "Loose bedding" in warned[0].texts[0]
        assert all(not getattr(b, "warning", "") for b in order_paper(what, calm()).blocks)


def calm() -> BatchRecord:
    return replace(record(), cautions=())


PAPERS: dict[OrderPaper, PaperFacts] = {
    OrderPaper.RECEIPT: receipt_of(OFFER, log(paid("50")), 1, day=DAY),
    OrderPaper.BILL: bill_of(OFFER, (), BillAsked(), day=DAY),
    OrderPaper.BATCH: record(),
}


@pytest.mark.parametrize("what", PAPERS)
def test_a_paper_that_cancels_another_names_it_and_repeats_what_it_said(what: OrderPaper) -> None:
    first = numbered(PAPERS[what], "2026-001", [])
    paper = order_paper(what, cancelling(first, "2026-002", date(2027, 1, 4)))
    assert "2026-002, which cancels" in paper.title
    assert paper.heading == "4 January 2027"
    note, *rest = paper.blocks
    assert isinstance(note, Words)
    assert "2026-001 no longer holds" in note.texts[0]
    assert tuple(rest) == order_paper(what, first).blocks


@pytest.mark.parametrize("locale", ["de_FR", "en-NL"])
def test_a_language_that_has_no_data_for_a_country_is_said_as_in_any(locale: str) -> None:
    paper = order_paper(OrderPaper.LABEL, record(replace(OFFER, locale=locale)))
    assert paper.language == locale[:2]
