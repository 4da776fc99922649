"""A join that looks alike as a saving; and savings of squares and of pieces from the centre."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, MotifJoin
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.budget import Change, Saving, savings
from quoting.core.weighing.other_joins import ALIKE, other_joins
from quoting.wording import change_words, speech_of
from tests.examples import TODAY, band, sample_quote
from tests.motif_examples import (
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

WORKSHOP = motif_workshop()
SAY = speech_of(WORKSHOP)


def quoted(order: Order) -> Quote:
    return quote_order(order, WORKSHOP, today=TODAY)


def saved(order: Order) -> dict[Change, Saving]:
    return {saving.change: saving for saving in savings(quoted(order), today=TODAY)}


def joined(method: JoinMethod, **changes: object) -> Order:
    body = replace(sample_squares(), join=MotifJoin(method=method, colour="oat", **changes))
    return squares_order(body=body)


@pytest.mark.parametrize("alike", ALIKE)
def test_joins_that_look_alike_are_tried_for_one_another(
    alike: tuple[JoinMethod, JoinMethod],
) -> None:
    one, other = alike
    for asked, offered in ((one, other), (other, one)):
        order = joined(asked, added_cm=0.7)
        ((method, body),) = other_joins(order.design.body, quoted(order).plan)
        assert method is offered
        assert body.join == MotifJoin(method=offered, colour="oat")


def test_a_braid_and_a_body_without_motifs_have_no_join_like_theirs() -> None:
    braided = joined(JoinMethod.FLAT_BRAID)
    assert list(other_joins(braided.design.body, quoted(braided).plan)) == []
    quote = sample_quote()
    assert list(other_joins(quote.order.design.body, quote.plan)) == []


def test_one_last_round_for_all_motifs_saves_the_ends_of_theirs() -> None:
    """88 × 8 + 2 = 706 ends for 880 (counted), besides those of the border and of joined balls."""
    order = squares_order(body=replace(sample_squares(), join=MotifJoin()))
    saving = saved(order)[Change.OTHER_JOIN]
    assert saving.subject == JoinMethod.CONTINUOUS.value
    body = saving.quote.order.design.body
    assert isinstance(body, JoinedSquares)
    assert body.join.colour == "oat"
    before, after = (
        estimate.ends - 2 * estimate.ended(Why.RAN_OUT)
        for estimate in (quoted(order).estimate, saving.quote.estimate)
    )
    assert before - after == 174
    assert change_words(saving, SAY) == "Join the motifs otherwise: in one last round"


def test_a_crocheted_join_is_told_by_the_names_of_the_workshop() -> None:
    saving = saved(joined(JoinMethod.SINGLE_CROCHET)).get(Change.OTHER_JOIN)
    assert saving is not None
    assert change_words(saving, SAY) == "Join the motifs otherwise: slip stitch"


def test_squares_save_by_fewer_colours_in_each_motif() -> None:
    saving = saved(squares_order())[Change.CALMER_STRIPES]
    assert change_words(saving, SAY) == "Fewer colours in each motif"


def test_a_piece_from_the_centre_saves_by_wider_stripes() -> None:
    body = sample_centre("teal", "rust", "oat")
    saving = saved(centre_order(body=body, width_cm=100, height_cm=100))[Change.CALMER_STRIPES]
    assert change_words(saving, SAY) == "Wider stripes, with fewer changes of colour"


def test_a_border_in_which_ends_are_enclosed_is_never_left_out() -> None:
    enclosed = squares_order(border=(band(),), ends=EndsBecome.ENCLOSED)
    assert Change.SMALLER_BORDER not in saved(enclosed)
    wide = squares_order(border=(band("hdc", rounds=3),), ends=EndsBecome.ENCLOSED)
    smaller = saved(wide)[Change.SMALLER_BORDER].quote.order.design
    assert smaller.border == (band("hdc", rounds=2),)
