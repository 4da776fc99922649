"""A card of choices in words: what differs beside each, the rest once, no number."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.quote.offer import Offer, offer_of
from quoting.core.quote.offer_rows import Row, RowCode
from quoting.core.workshop.exchange import ExchangeRate
from quoting.wording.choices import choices_paper
from quoting.wording.paper import Amounts, Beside, Facts, Paper, Picture, Sheet, Words
from tests.examples import TODAY, sample_quote

OFFER = offer_of(sample_quote())
LARGER = replace(OFFER, width_cm=120.0, ready_by=date(2027, 1, 8), weight_g=900.0)
EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY)
DRAWN = Picture(svg="<svg/>", in_words="A blanket.")


def card(*offers: Offer) -> Paper:
    return choices_paper(offers, [DRAWN] * len(offers))


def columns(paper: Paper) -> list[tuple[str, list[str], list[str]]]:
    """Return the heading, the facts' names and the amounts of each column."""
    (beside,) = (block for block in paper.blocks if isinstance(block, Beside))
    found = []
    for words, _, facts, amounts in beside.columns:
        assert isinstance(words, Words)
        assert isinstance(facts, Facts)
        assert isinstance(amounts, Amounts)
        names = [fact.name for fact in facts.facts]
        found.append((words.heading, names, [row.amount for row in amounts.rows]))
    return found


def shared(paper: Paper) -> list[str]:
    """Return the names of what is said once."""
    (facts,) = (block for block in paper.blocks if isinstance(block, Facts))
    return [fact.name for fact in facts.facts]


def test_what_differs_stands_with_each_and_the_rest_once() -> None:
    paper = card(OFFER, LARGER)
    differing = ["Size", "Weight", "With you by"]
    assert [(letter, names) for letter, names, _ in columns(paper)] == [
        ("A", differing),
        ("B", differing),
    ]
    assert {"Stitch", "Yarn", "Colours", "Valid until"} <= set(shared(paper))
    assert not set(shared(paper)) & set(differing)


def test_colours_that_are_worked_in_another_order_are_the_same() -> None:
    turned = replace(LARGER, colours=OFFER.colours[::-1])
    assert "Colours" in shared(card(OFFER, turned))
    fewer = replace(LARGER, colours=OFFER.colours[1:])
    assert "Colours" not in shared(card(OFFER, fewer))


@pytest.mark.parametrize(("offers", "letters"), [(2, "A or B:"), (3, "A, B or C:")])
def test_the_buyer_is_told_that_it_is_no_quote_and_how_to_answer(offers: int, letters: str) -> None:
    first = card(*[OFFER, LARGER, replace(LARGER, width_cm=200.0)][:offers]).blocks[0]
    assert isinstance(first, Words)
    (text,) = first.texts
    assert text.startswith("This is a choice and no quote yet.")
    assert letters in text


def test_it_bears_no_number_even_where_the_offers_do() -> None:
    numbered = replace(OFFER, number="2026-014")
    assert "2026-014" not in repr(card(numbered, LARGER))


def test_it_is_for_its_buyer_or_for_whoever_asks() -> None:
    assert card(OFFER, LARGER).heading == "A choice for Rosalind Quill, 25 November 2026"
    nobody = replace(OFFER, buyer="")
    assert card(nobody, LARGER).heading == "A choice, 25 November 2026"


def test_the_total_is_told_in_the_buyers_currency_too() -> None:
    abroad = Row(code=RowCode.TOTAL, amount=Decimal("239.85"), currency="EUR")
    offer = replace(OFFER, rows=(*OFFER.rows, abroad), exchange=EURO)
    assert columns(card(offer, LARGER))[0][2][1] == "€239.85"


def test_a_caution_that_holds_for_all_is_said_once() -> None:
    assert OFFER.cautions
    warnings = [b for b in card(OFFER, LARGER).blocks if isinstance(b, Words) and b.warning]
    assert len(warnings) == 1
    assert len(warnings[0].texts) == len(set(warnings[0].texts)) == len(OFFER.cautions)
    bare = replace(OFFER, cautions=()), replace(LARGER, cautions=())
    assert not [b for b in card(*bare).blocks if isinstance(b, Words) and b.warning]


def test_it_is_printed_on_what_its_readers_printer_holds() -> None:
    assert card(OFFER, LARGER).sheet is Sheet.A4
    american = [replace(offer, locale="en_US") for offer in (OFFER, LARGER)]
    assert card(*american).sheet is Sheet.LETTER
