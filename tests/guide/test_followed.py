"""The guide of any order, followed by someone who knows only its words, gives the plan's passes."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings

from quoting.core.estimate.row_guide import Act, row_notes
from quoting.core.order.design import Design
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.wording.guide import guide_paper
from tests.core.random_strands import designs, habits
from tests.core.striped_orders import endless
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, section
from tests.guide.follower import Worked, follow, listing

HANDS = {
    False: {Edge.START: "right-hand", Edge.FAR: "left-hand"},
    True: {Edge.START: "left-hand", Edge.FAR: "right-hand"},
}


def asked(worked: Pass, quote: Quote) -> dict[str, object]:
    """Return a pass in the words that the follower tells what she worked in."""
    edges = HANDS[quote.workshop.habits.left_handed]
    is_chain = worked.work is Work.CHAIN
    count = quote.plan.foundation_chain if is_chain else worked.stitches[worked.stitch]
    chains = 0 if is_chain else worked.stitches.get(Stitch.CH, 0)
    return {
        "kind": worked.work.value,
        "number": worked.number,
        "colour": worked.colour,
        "stitch": worked.stitch,
        "count": count,
        "chains": chains,
        "starts": edges[worked.starts],
        "ends": edges[worked.ends],
    }


def told(worked: Worked) -> dict[str, object]:
    return {name: value for name, value in vars(worked).items() if not name.endswith("_with")}


def check(quote: Quote) -> None:
    followed = follow(guide_paper(quote))
    assert [told(one) for one in followed] == [asked(p, quote) for p in quote.plan.passes]


@settings(max_examples=60)
@given(design=designs, how=habits)
def test_a_random_order_is_worked_as_it_was_planned(design: Design, how: Habits) -> None:
    order = sample_order(design=design, extras=())
    check(sample_quote(order, sample_workshop(habits=how)))
    check(sample_quote(order, sample_workshop(habits=replace(how, left_handed=True))))


@settings(max_examples=40)
@given(design=designs, how=habits)
def test_the_yarn_is_started_carried_and_cut_as_the_strands_are(
    design: Design, how: Habits
) -> None:
    """With balls that never end, what she did with the yarn is what the strands did."""
    quote = sample_quote(sample_order(design=design, extras=()), endless(habits=how))
    notes = row_notes(quote.estimate.strands, len(quote.plan.passes))
    for worked, wanted in zip(follow(guide_paper(quote)), notes, strict=True):
        acts = [act for act in (worked.begins_with, worked.ends_with) if act]
        assert Counter(acts) == Counter(note.act.value for note in wanted)


@pytest.mark.parametrize("rows", [10, 400])
def test_few_rows_and_many_are_worked_as_planned_in_a_dozen_lines(rows: int) -> None:
    stripes = section("teal", "rust", "oat", "plum", "moss", repeats=rows // 5)
    quote = sample_quote(sample_order(design=sample_design(first_rows=(), sections=(stripes,))))
    check(quote)
    assert len(listing(guide_paper(quote), "Step by step").rows) <= 12


def test_stitches_are_told_by_whose_names_the_workshop_speaks() -> None:
    quote = sample_quote(None, sample_workshop(speaks=Vocabulary.UK))
    followed = follow(guide_paper(quote))
    assert {worked.stitch for worked in followed} == {"ch", "htr", "dc"}
    assert [worked.count for worked in followed[1:]] == [
        worked.stitches[worked.stitch] for worked in quote.plan.passes[1:]
    ]


def test_ends_that_are_followed_are_those_of_the_estimate() -> None:
    quote = sample_quote(None, endless())
    followed = follow(guide_paper(quote))
    ends = sum(bool(w.begins_with == Act.START) for w in followed)
    ends += sum(w.ends_with in (Act.CUT, Act.FASTEN_OFF) for w in followed)
    assert ends == quote.estimate.ends
