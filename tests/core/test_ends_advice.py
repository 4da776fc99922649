"""What is said of ends fits what becomes of them, and where they lie."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.cautions import Caution
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod, MotifJoin
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.yarns import PutUp
from quoting.wording import caution_sentence
from tests.constructed import constructed_quote, from_centre, motif_workshop, squares
from tests.examples import (
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
)
from tests.wording.speeches import UK_NAMES

SMALL_BALLS = (
    sample_yarn(put_ups=(PutUp(weight_g=20, length_m=40, price=Decimal("1.20")),), stock=()),
)
AT_THE_EDGE = (EndsBecome.ENCLOSED, EndsBecome.FRINGE)


def said(quote: Quote, code: str) -> Caution | None:
    return next((caution for caution in quote.cautions if caution.code == code), None)


def in_rows(become: EndsBecome, join: Join) -> Quote:
    shop = sample_workshop(yarns=SMALL_BALLS, habits=Habits(join=join))
    return sample_quote(sample_order(design=sample_design(ends=become)), shop)


@pytest.mark.parametrize("become", EndsBecome)
def test_balls_joined_within_rows_leave_ends_that_no_border_or_fringe_reaches(
    become: EndsBecome,
) -> None:
    quote = in_rows(become, Join.ANYWHERE)
    caution = said(quote, "ends-lie-within")
    assert (caution is not None) is (become in AT_THE_EDGE)
    if caution is not None:
        assert "join balls at an edge" in caution_sentence(caution, UK_NAMES)


@pytest.mark.parametrize("become", EndsBecome)
def test_balls_joined_at_an_edge_leave_none_there(become: EndsBecome) -> None:
    assert said(in_rows(become, Join.AT_AN_EDGE), "ends-lie-within") is None


@pytest.mark.parametrize("become", AT_THE_EDGE)
def test_rounds_leave_theirs_within_the_work(become: EndsBecome) -> None:
    caution = said(constructed_quote(from_centre(), ends=become), "ends-lie-within")
    assert caution is not None
    assert caution_sentence(caution, UK_NAMES).startswith("Rounds begin and end within")


def test_many_ends_are_told_by_what_is_done_with_them() -> None:
    body, minutes = squares(columns=9, rows=9), sample_minutes(work_over_end=(2.0,))
    shop = motif_workshop(minutes=minutes)
    caution = said(constructed_quote(body, shop, ends=EndsBecome.WORKED_OVER), "many-ends")
    assert caution is not None
    assert "of working over ends." in caution_sentence(caution, UK_NAMES)


def test_of_motifs_no_stripes_are_advised() -> None:
    caution = said(constructed_quote(squares(columns=9, rows=9)), "many-ends")
    assert caution is not None
    assert "carried up the side" not in caution_sentence(caution, UK_NAMES)


def test_a_colour_that_is_only_sewn_with_lies_at_no_wrong_edge() -> None:
    join = MotifJoin(method=JoinMethod.MATTRESS, colour="slate")
    quote = constructed_quote(squares(join=join, columns=9, rows=9), border=())
    assert said(quote, "wrong-edge") is None


def test_a_ball_that_ends_among_the_first_motifs_does_not_end_late() -> None:
    """Of a layout of five rounds all are among its last five, but not its first motifs."""
    body = squares(columns=20, rows=20)
    quote = constructed_quote(body, border=())
    late = {c.facts["colour"] for c in quote.cautions if c.code == "runs-out-late"}
    for colour in quote.estimate.colours:
        ends = [e.expected for e in colour.ball_ends if e.expected is not None]
        in_the_last = any(e.part == 1 and e.copy == quote.plan.parts[1].count - 1 for e in ends)
        assert (colour.colour in late) <= in_the_last
