"""Layouts that come to no motif: told to the maker by their numbers, whatever the reason."""

from __future__ import annotations

import pytest

from quoting.core.order.joined_squares import Layout, Pool
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.plan.parts import PartKind
from quoting.core.plan.plan import plan_order
from quoting.wording import caution_sentence
from tests.motif_examples import FIVE, motif_workshop, sample_squares, squares_order
from tests.wording.speeches import GB

OTHER = FIVE[::-1]
FOURTH = ("oat",) * 5


def told_of(*layouts: Layout, **body: object) -> list[str]:
    """Return what is said of layouts that are left out."""
    order = squares_order(body=sample_squares(layouts=layouts, **body))
    cautions = plan_order(order, motif_workshop()).cautions
    return [caution_sentence(c, GB) for c in cautions if c.code == "layout-left-out"]


def test_a_layout_beside_one_that_is_counted_for_every_motif_is_said_to_get_none() -> None:
    counted = Layout(colours=FIVE, count=88)
    assert told_of(counted, Layout(colours=OTHER)) == [
        "Layout 2 gets no motif: the others take all 88. Give it some of these, or take it out."
    ]


def test_several_are_named_together_by_the_numbers_that_they_were_given_with() -> None:
    first, third = Layout(colours=OTHER), Layout(colours=FOURTH, share=3)
    assert told_of(first, Layout(colours=FIVE, count=88), third) == [
        "Layouts 1 and 3 get no motif: the others take all 88. Give them some of these, or take "
        "them out."
    ]


@pytest.mark.parametrize("share", [1.0, 0.001])
def test_more_layouts_than_motifs_leave_some_out(share: float) -> None:
    layouts = [Layout(colours=(*FIVE[:4], last), share=share) for last in FIVE]
    (said,) = told_of(*layouts, columns=2, rows=2)
    assert said.startswith("Layout 5 gets no motif: the others take all 4.")


def test_a_share_too_small_for_a_single_motif_is_told() -> None:
    (said,) = told_of(Layout(colours=FIVE, share=0.001), Layout(colours=OTHER))
    assert said.startswith("Layout 1 gets no motif")


def test_where_every_layout_has_motifs_nothing_is_said() -> None:
    assert told_of(Layout(colours=FIVE, count=87), Layout(colours=OTHER)) == []


def test_the_others_keep_the_numbers_that_they_were_given_with_wherever_they_are_told() -> None:
    none = Layout(colours=FOURTH, share=0.001)
    layouts = (Layout(colours=FIVE, count=2), none, Layout(colours=OTHER))
    body = sample_squares(layouts=layouts, columns=2, rows=2)
    plan = plan_order(squares_order(body=body), motif_workshop())
    assert plan.grid is not None
    assert sorted(plan.grid.layouts) == [0, 0, 2, 2]
    assert [made.number for made in layouts_made(plan)] == [1, 3]
    assert [part.layout for part in plan.parts if part.kind is PartKind.MOTIF] == [0, 2]


def test_a_pool_has_no_layouts_that_a_maker_gave() -> None:
    pool = Pool(colours=FIVE[:4], outer=("oat",))
    assert told_of(pool=pool, columns=1, rows=2) == []
