"""What goes into a blanket is told line by line, as its maker has it, and of all the blankets."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.design import EndsBecome
from quoting.core.order.order import Order
from quoting.core.quote.offer import OfferedBorder, offer_of
from quoting.core.quote.quote import Quote
from quoting.core.quote.what_goes_in import ENDS, GoesIn, what_goes_in
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Pattern
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop, section
from tests.motif_examples import motif_workshop, squares_order

ALL = Documents(stitches=True, rows=True, yarn=True, ends=True, hours=True)
EACH = ("stitches", "rows", "yarn", "ends", "hours")


OF_OTHERS = {GoesIn.ROUNDS, GoesIn.MOTIFS, *ENDS.values()} - {GoesIn.ENDS}
"""What is counted of blankets in rounds or of motifs, and of ends that are not woven in."""


def quoted(told: Documents, order: Order | None = None) -> Quote:
    return sample_quote(order, sample_workshop(documents=told))


def amounts(quote: Quote) -> dict[str, Decimal]:
    return {one.code.value: one.amount for one in what_goes_in(quote)}


def test_nothing_is_told_unless_the_maker_says_so() -> None:
    assert offer_of(sample_quote()).goes_in == ()


@pytest.mark.parametrize("line", EACH)
def test_each_line_is_told_by_itself(line: str) -> None:
    told = replace(Documents(), **{line: True})
    assert list(amounts(quoted(told))) == [line]


def test_all_of_them_are_those_of_the_quote() -> None:
    quote = quoted(ALL)
    told, estimate = amounts(quote), quote.estimate
    assert list(told) == list(EACH)
    assert told["rows"] == len(quote.plan.rows)
    assert told["ends"] == estimate.ends
    assert told["hours"] == estimate.hours.making
    assert told["yarn"] == round(math.fsum(colour.metres for colour in estimate.colours))


def test_stitches_are_those_of_every_row_and_round_without_chains() -> None:
    """By hand: so many across in each row, and those of the rounds; no chain is counted."""
    quote = quoted(ALL, sample_order(quantity=3))
    rounds = sum(worked.stitches["sc"] for worked in quote.plan.rounds)
    assert rounds
    one = quote.plan.stitches * len(quote.plan.rows) + rounds
    assert amounts(quote)["stitches"] == 3 * one


def test_of_several_blankets_it_is_what_goes_into_all_of_them() -> None:
    one, three = (quoted(ALL, sample_order(quantity=count)) for count in (1, 3))
    for line in ("stitches", "rows"):
        assert amounts(three)[line] == 3 * amounts(one)[line]
    assert amounts(three)["yarn"] > 2 * amounts(one)["yarn"]


def test_it_never_tells_what_the_work_costs_or_pays() -> None:
    offer = offer_of(quoted(ALL))
    assert {one.code for one in offer.goes_in} == set(GoesIn) - OF_OTHERS
    assert "cost" not in {code.value for code in GoesIn}


def test_the_offer_has_the_promises_that_the_maker_makes_and_no_other() -> None:
    plain = offer_of(sample_quote())
    assert (plain.size_within_cm, plain.change_days) == (None, None)
    promised = offer_of(quoted(Documents(size_within_cm=2.0, change_days=5)))
    assert (promised.size_within_cm, promised.change_days) == (2.0, 5)


def test_the_border_is_told_round_by_round_and_none_is_told_as_none() -> None:
    border = offer_of(sample_quote()).border
    assert border == (OfferedBorder(colour="oat", rounds=1),)
    bare = sample_order(design=sample_design(border=()))
    assert offer_of(sample_quote(bare)).border == ()


def test_a_pattern_bears_the_words_that_its_maker_has_for_buyers() -> None:
    moss = Pattern(name="moss", like=Stitch.SC, multiple=2, for_buyers="a dense, pebbled texture")
    shop = sample_workshop(patterns=(moss,))
    design = sample_design(stitch="moss", sections=(section("oat", repeats=20),), first_rows=())
    offer = offer_of(sample_quote(sample_order(design=design), shop))
    assert (offer.stitch, offer.stitch_words) == ("moss", "a dense, pebbled texture")
    assert offer_of(sample_quote(None, shop)).stitch_words == ""


@pytest.mark.parametrize(
    ("wrong", "place", "code"),
    [
        ({"size_within_cm": 0.0}, "size_within", "not-above"),
        ({"size_within_cm": 101.0}, "size_within", "too-large"),
        ({"size_within_cm": math.nan}, "size_within", "not-finite"),
        ({"change_days": 0}, "change_days", "too-small"),
        ({"change_days": 366}, "change_days", "too-large"),
    ],
)
def test_a_promise_that_cannot_be_kept_is_refused(
    wrong: dict[str, float], place: str, code: str
) -> None:
    with pytest.raises(Refused) as refusal:
        Documents(**wrong)  # type: ignore[arg-type]
    ((mistake),) = refusal.value.mistakes
    assert (mistake.path, mistake.code) == (place, code)


def test_motifs_are_those_of_every_blanket() -> None:
    workshop = motif_workshop(documents=Documents(rows=True, stitches=True))
    quote = sample_quote(replace(squares_order(border=()), quantity=2), workshop)
    assert quote.plan.grid is not None
    squares = 2 * quote.plan.grid.count
    assert amounts(quote) == {"stitches": 180 * squares, "motifs": squares, "rounds": 5 * squares}


@pytest.mark.parametrize("become", EndsBecome)
def test_ends_are_told_as_what_becomes_of_them(become: EndsBecome) -> None:
    order = sample_order(design=sample_design(ends=become))
    workshop = sample_workshop(documents=Documents(ends=True), habits=Habits(join=Join.AT_AN_EDGE))
    quote = sample_quote(order, workshop)
    assert amounts(quote) == {ENDS[become].value: quote.estimate.ends}


def test_ends_within_the_work_are_told_as_woven_in() -> None:
    """Balls are joined within rows; the two ends of a border are no fringe round squares."""
    order = sample_order(design=sample_design(ends=EndsBecome.FRINGE), quantity=3)
    rows = sample_quote(order, sample_workshop(documents=Documents(ends=True)))
    told = amounts(rows)
    assert told["ends"] > told["ends-fringe"] > 0
    assert sum(told.values()) == rows.estimate.ends
    shop = motif_workshop(documents=Documents(ends=True))
    squares = sample_quote(squares_order(ends=EndsBecome.FRINGE), shop)
    assert amounts(squares) == {"ends": squares.estimate.ends}
