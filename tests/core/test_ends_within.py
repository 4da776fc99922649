"""Ends that lie within are woven in, whatever becomes of those at the edges."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.estimate.chores import ENDS_CHORES
from quoting.core.estimate.ends_within import ends_to_weave
from quoting.core.ground.codes import CautionCode
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.order.order import Order
from quoting.core.plan.passes import Edge
from quoting.core.quote.fate_of_ends import fate_at_edges, main_fate, woven_besides
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.habits import Habits, Join
from tests.examples import TODAY, band, sample_design, sample_order
from tests.motif_examples import FIVE, centre_order, motif_workshop, sample_squares, squares_order

AT_THE_EDGE = [EndsBecome.ENCLOSED, EndsBecome.FRINGE]
WEAVING = ENDS_CHORES[EndsBecome.WOVEN_IN]


def quoted(order: Order) -> Quote:
    return quote_order(order, motif_workshop(), today=TODAY)


def counts(quote: Quote) -> dict[str, float]:
    return {task.what: task.count for task in quote.estimate.hours.every_task}


@pytest.mark.parametrize("become", AT_THE_EDGE)
@pytest.mark.parametrize(
    "order",
    [
        squares_order(body=sample_squares(method=JoinMethod.WHIPSTITCH)),
        centre_order(border=(band(),)),
        centre_order(border=tuple(band("hdc", colour) for colour in FIVE)),
    ],
    ids=["squares", "one colour round a centre", "five round it"],
)
def test_of_rounds_and_motifs_all_ends_are_woven_in_for_a_borders_are_no_fringe(
    order: Order, become: EndsBecome
) -> None:
    """Those of the border come to where its rounds begin, two for each of its colours."""
    quote = quoted(replace(order, design=replace(order.design, ends=become)))
    assert counts(quote)[WEAVING] == woven_besides(quote) == quote.estimate.ends
    assert ENDS_CHORES[become] not in counts(quote)
    assert main_fate(quote) is fate_at_edges(quote) is EndsBecome.WOVEN_IN
    assert CautionCode.ENDS_LIE_WITHIN in {caution.code for caution in quote.cautions}


def test_many_ends_that_are_woven_in_are_not_called_a_fringe() -> None:
    quote = quoted(squares_order(ends=EndsBecome.FRINGE))
    (told,) = (one for one in quote.cautions if one.code is CautionCode.MANY_ENDS)
    assert told.facts["become"] is None


def test_of_rows_only_the_ends_of_balls_joined_within_are_woven_in() -> None:
    quote = quoted(sample_order(design=sample_design(ends=EndsBecome.FRINGE), quantity=3))
    places = [p for s in quote.estimate.strands for p in (s.starts, s.ends)]
    within = sum(place.edge is Edge.WITHIN for place in places)
    assert within
    assert counts(quote)[WEAVING] == within
    assert counts(quote)["fringe_end"] == quote.estimate.ends - within
    assert fate_at_edges(quote) is EndsBecome.FRINGE


def test_all_ends_of_rows_hang_at_the_edges_where_balls_are_joined_there() -> None:
    order = sample_order(design=sample_design(ends=EndsBecome.FRINGE))
    workshop = motif_workshop(habits=Habits(join=Join.AT_AN_EDGE))
    quote = quote_order(order, workshop, today=TODAY)
    assert WEAVING not in counts(quote)
    assert main_fate(quote) is EndsBecome.FRINGE


@pytest.mark.parametrize("become", [EndsBecome.WOVEN_IN, EndsBecome.WORKED_OVER])
def test_ends_that_are_woven_in_or_worked_over_are_so_wherever_they_lie(
    become: EndsBecome,
) -> None:
    quote = quoted(squares_order(ends=become))
    assert ends_to_weave(become, quote.estimate.strands, quote.plan) == 0
    assert counts(quote)[ENDS_CHORES[become]] == quote.estimate.ends


def test_the_tails_of_motifs_are_no_fringe() -> None:
    woven, fringe = (
        quoted(squares_order(ends=become)).estimate.colours[0].tail_m
        for become in (EndsBecome.WOVEN_IN, EndsBecome.FRINGE)
    )
    assert woven == fringe
