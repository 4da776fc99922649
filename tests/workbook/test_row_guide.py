"""What is said of the yarn in each row follows from the strands."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.estimate.row_guide import Act, RowNote, row_notes
from quoting.core.estimate.strands import Why
from quoting.core.plan.passes import Work
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp
from quoting.wording import notes_sentence, speech_of
from tests.examples import sample_order, sample_quote, sample_workshop, sample_yarn
from tests.workbook.orders import quotes


def notes_of(quote: Quote, blanket: int = 0) -> list[list[RowNote]]:
    return row_notes(quote.estimate.strands, len(quote.plan.passes), blanket)


def sentences_of(quote: Quote) -> list[str]:
    speech, noted = speech_of(quote.workshop), zip(notes_of(quote), quote.plan.passes, strict=True)
    return [notes_sentence(notes, worked, quote.plan, speech) for notes, worked in noted]


def test_three_colours_row_by_row_are_started_once_and_carried_up_ever_after() -> None:
    sentences = sentences_of(sample_quote())
    left, right = "left-hand edge", "right-hand edge"
    assert sentences[0] == f"Start oat at the {left}."
    assert sentences[1] == f"Leave it waiting at the {left}."
    assert sentences[2] == f"Start teal at the {left}; leave it waiting at the {right}."
    assert sentences[3] == f"Start rust at the {right}; leave it waiting at the {left}."
    assert sentences[4] == f"Carry up at the {left}; leave it waiting at the {right}."
    assert sentences[-1] == "Fasten off at the left-hand edge."


@pytest.mark.parametrize("name", list(quotes()))
def test_every_strand_begins_and_ends_in_the_notes(name: str, all_quotes: dict[str, Quote]) -> None:
    quote = all_quotes[name]
    acts: Counter[Act] = Counter()
    for blanket in range(quote.order.quantity):
        acts.update(note.act for notes in notes_of(quote, blanket) for note in notes)
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


def test_a_ball_joined_inside_a_border_is_joined_within_the_round() -> None:
    tiny = PutUp(weight_g=5, length_m=10, price=Decimal("1.00"))
    quote = sample_quote(None, sample_workshop(yarns=(sample_yarn(put_ups=(tiny,)),)))
    for worked, said in zip(quote.plan.passes, sentences_of(quote), strict=True):
        assert ("within the round" in said) == (worked.work is Work.ROUND), said


def test_a_colour_is_fastened_off_in_each_blanket() -> None:
    quote = sample_quote(replace(sample_order(), quantity=2))
    for blanket in (0, 1):
        acts = [note.act for notes in notes_of(quote, blanket) for note in notes]
        assert acts.count(Act.FASTEN_OFF) == 3
