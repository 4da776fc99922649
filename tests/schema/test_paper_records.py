"""A paper that is kept as a record comes back as it was, and what is typed of one as typed."""

from __future__ import annotations

import json
from dataclasses import fields, replace
from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.core.papers.batch import BatchAsked, BatchLot, batch_of
from quoting.core.papers.bill import BillAsked, bill_of
from quoting.core.papers.receipt import receipt_of
from quoting.core.papers.series import PaperFacts, cancelling, kind_of, numbered
from quoting.core.quote.offer import offer_of
from quoting.schema.paper_shapes import (
    BATCH_ASKED,
    BATCH_LOT,
    BILL_ASKED,
    DUE_SHARE,
    HEAD,
    PAID,
    PAPER_SHAPES,
    paper_record,
    read_paper,
)
from quoting.schema.shape import Shape
from tests.core.making.logs import DAY, log, paid
from tests.examples import sample_quote
from tests.schema.notations import TYPED, as_sent, from_sent

SHAPES = (*PAPER_SHAPES.values(), HEAD, PAID, DUE_SHARE, BATCH_LOT, BILL_ASKED, BATCH_ASKED)

OFFER = offer_of(sample_quote())
ENTRIES = log(paid("50"), paid("-5"))
ASKED = BatchAsked(finished=DAY, width_cm=81.25, height_cm=99, weight_g=612.5)

PAPERS: dict[str, PaperFacts] = {
    "receipt": receipt_of(OFFER, ENTRIES, 1, day=DAY),
    "bill": bill_of(OFFER, ENTRIES, BillAsked(pay_by=date(2026, 12, 24)), day=DAY),
    "record": batch_of(OFFER, ENTRIES, {}, ASKED, makers_locale="en_GB", day=DAY),
    "record, nothing measured": batch_of(
        OFFER, (), {}, BatchAsked(finished=DAY), makers_locale="de_DE", day=DAY
    ),
}


def kept(paper: PaperFacts) -> PaperFacts:
    """Return a paper written as JSON and read again."""
    return read_paper(kind_of(paper), json.loads(json.dumps(paper_record(paper))))


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.value.__name__)
def test_every_field_is_in_the_shape_once(shape: Shape[Any]) -> None:
    described = [key.field for key in shape.keys]
    assert sorted(described) == sorted(item.name for item in fields(shape.value))


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS.keys())
def test_a_paper_comes_back_the_same_and_so_does_one_that_cancels_it(paper: PaperFacts) -> None:
    given = numbered(paper, "2026-001", [paper])
    assert kept(given) == given
    wrong = cancelling(given, "2026-002", date(2027, 1, 1))
    assert kept(wrong) == wrong


@given(st.text(max_size=20), st.text(max_size=20), st.none() | st.floats(0, 1e6))
def test_whatever_is_written_on_a_paper_comes_back_the_same(
    name: str, lot: str, grams: float | None
) -> None:
    paper = PAPERS["record"]
    head = replace(paper.head, buyer=name, title=name, address=name, contact=lot)
    lots = (BatchLot(yarn=name, colour=name, lot=lot, grams=grams),)
    changed = replace(paper, head=head, lots=lots, care=name)  # type: ignore[call-arg]
    assert kept(changed) == changed


def test_what_is_no_paper_is_refused_at_its_place() -> None:
    record = paper_record(PAPERS["bill"]) | {"quantity": "two"}
    with pytest.raises(Refused) as refusal:
        read_paper("bill", record)
    assert [mistake.path for mistake in refusal.value.mistakes] == ["quantity"]


@pytest.mark.parametrize(
    ("shape", "asked"),
    [
        (BILL_ASKED, BillAsked()),
        (BILL_ASKED, BillAsked(pay_by=DAY)),
        (BATCH_ASKED, BatchAsked(finished=DAY)),
        (BATCH_ASKED, ASKED),
    ],
)
def test_what_is_typed_of_a_paper_is_read_as_it_was_shown(shape: Shape[Any], asked: object) -> None:
    for notation in TYPED.values():
        assert from_sent(shape, as_sent(shape, asked, notation), notation) == asked
