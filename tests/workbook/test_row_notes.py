"""What is said of the yarn in each row follows from the strands."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest

from exports.row_notes import Act, notes_sentence, row_notes
from quoting.core.quote import Quote
from quoting.core.strands import Why
from tests.examples import sample_order, sample_quote
from tests.workbook.orders import quotes


def notes_of(quote: Quote, piece: int = 0) -> list:
    return row_notes(quote.estimate.strands, len(quote.plan.passes), piece)


def test_three_colours_row_by_row_are_started_once_and_carried_up_ever_after() -> None:
    sentences = [notes_sentence(notes) for notes in notes_of(sample_quote())]
    assert sentences[0] == "Start oat at the far edge."
    assert sentences[1] == "Leave it waiting at the far edge."
    assert sentences[2] == "Start teal at the far edge; leave it waiting at the start edge."
    assert sentences[3] == "Start rust at the start edge; leave it waiting at the far edge."
    assert sentences[4] == "Carry up at the far edge; leave it waiting at the start edge."
    assert sentences[-1] == "Fasten off at the far edge."


@pytest.mark.parametrize("name", list(quotes()))
def test_every_strand_begins_and_ends_in_the_notes(name: str, all_quotes: dict[str, Quote]) -> None:
    quote = all_quotes[name]
    acts: Counter[Act] = Counter()
    for piece in range(quote.order.quantity):
        acts.update(note.act for notes in notes_of(quote, piece) for note in notes)
    strands = quote.estimate.strands
    joins = sum(strand.why is Why.RAN_OUT for strand in strands)
    assert acts[Act.START] + acts[Act.JOIN] == len(strands)
    assert acts[Act.CUT] + acts[Act.FASTEN_OFF] + acts[Act.JOIN] == len(strands)
    assert acts[Act.JOIN] == joins
    assert acts[Act.CARRY_UP] == acts[Act.WAIT] == quote.estimate.carries


@pytest.mark.parametrize("name", list(quotes()))
def test_a_note_is_about_the_yarn_of_its_own_row(name: str, all_quotes: dict[str, Quote]) -> None:
    quote = all_quotes[name]
    for worked, notes in zip(quote.plan.passes, notes_of(quote), strict=True):
        assert {note.colour for note in notes} <= {worked.colour}


def test_a_colour_is_fastened_off_in_each_blanket() -> None:
    quote = sample_quote(replace(sample_order(), quantity=2))
    for piece in (0, 1):
        acts = [note.act for notes in notes_of(quote, piece) for note in notes]
        assert acts.count(Act.FASTEN_OFF) == 3
