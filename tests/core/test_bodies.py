"""What bodies from the centre and of squares answer when an order is varied."""

from __future__ import annotations

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.joined_squares import (
    MOST_LAYOUTS,
    JoinMethod,
    Layout,
    MotifJoin,
    Pool,
)
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.motifs import MOST_ROUNDS
from tests.motif_examples import (
    FIVE,
    motif_workshop,
    sample_centre,
    sample_motif,
    sample_squares,
    squares_order,
)


def codes(refused: pytest.ExceptionInfo[Refused]) -> list[tuple[str, str]]:
    return [(str(mistake.place), mistake.code.value) for mistake in refused.value.mistakes]


def test_stripes_from_the_centre_are_recoloured_one_colour_for_another() -> None:
    body = sample_centre("teal", "rust", "teal", "oat")
    assert body.main_colours == ("teal", "rust", "oat")
    dyed = body.recoloured("teal", "oat")
    assert [stripe.colour for stripe in dyed.stripes] == ["oat", "rust", "oat", "oat"]


def test_counts_of_one_size_are_left_behind_with_it() -> None:
    centre = sample_centre(rounds=30, starts_on=4).resized()
    assert (centre.rounds, centre.starts_on, centre.repeats) == (None, None, None)
    squares = sample_squares(columns=8, rows=11).resized()
    assert (squares.columns, squares.rows) == (None, None)


def test_numbers_of_squares_become_shares_at_another_size() -> None:
    layouts = (Layout(colours=FIVE, count=60), Layout(colours=FIVE[::-1], count=28))
    body = sample_squares(layouts=layouts, columns=8, rows=11)
    assert [(each.share, each.count) for each in body.resized().layouts] == [
        (60.0, None),
        (28.0, None),
    ]
    small = squares_order(width_cm=65, height_cm=85, body=body.resized())
    plan = plan_order(small, motif_workshop())
    assert [part.count for part in plan.parts if part.layout is not None] == [14, 6]


def test_squares_are_recoloured_join_and_all() -> None:
    body = sample_squares(method=JoinMethod.SINGLE_CROCHET)
    assert body.main_colours == FIVE
    dyed = body.recoloured("oat", "slate")
    assert dyed.layouts[0].colours == (*FIVE[:4], "slate")
    assert dyed.join.colour == "slate"


def test_a_pool_that_is_recoloured_has_each_colour_once() -> None:
    body = sample_squares(layouts=(), pool=Pool(colours=FIVE[:3], outer=("oat", "teal")))
    assert body.main_colours == ("teal", "rust", "plum", "oat")
    dyed = body.recoloured("teal", "rust")
    assert dyed.pool == Pool(colours=("rust", "plum"), outer=("oat", "rust"))
    assert dyed.join.colour == "oat"


def test_a_pool_mixes_its_colours_evenly_and_none_lies_next_to_itself() -> None:
    body = sample_squares(
        layouts=(), pool=Pool(colours=FIVE[:4], outer=("oat",)), columns=4, rows=4
    )
    plan = plan_order(squares_order(body=body, border=()), motif_workshop())
    drawn = {colour: [0] * 4 for colour in FIVE[:4]}
    for worked in plan.rows:
        if worked.drawn:
            drawn[worked.colour][worked.number - 1] += plan.times(worked)
    assert drawn == {colour: [4, 4, 4, 4] for colour in FIVE[:4]}
    for part in range(4):
        inner = [worked.colour for worked in plan.rows if worked.part == part and worked.drawn]
        assert len(set(inner)) == 4


def test_the_grid_tells_which_layout_lies_where() -> None:
    body = sample_squares(FIVE, FIVE[::-1], columns=3, rows=2)
    grid = plan_order(squares_order(body=body), motif_workshop()).grid
    assert grid is not None
    assert [[grid.layout_at(column, row) for column in range(3)] for row in range(2)] == [
        [0, 1, 0],
        [1, 0, 1],
    ]


@pytest.mark.parametrize(
    ("colours", "mistake"),
    [((), ("colours", "missing")), (("oat",) * (MOST_ROUNDS + 1), ("colours", "too-many"))],
)
def test_a_layout_has_colours_and_not_too_many(
    colours: tuple[str, ...], mistake: tuple[str, str]
) -> None:
    for make in (Layout, Pool):
        with pytest.raises(Refused) as refused:
            make(colours=colours)
        assert codes(refused) == [mistake]


def test_there_are_layouts_and_not_too_many() -> None:
    with pytest.raises(Refused) as refused:
        sample_squares(*[FIVE] * (MOST_LAYOUTS + 1))
    assert codes(refused) == [("layouts", "too-many")]


def test_stripes_from_the_centre_are_some_and_not_too_many() -> None:
    with pytest.raises(Refused) as refused:
        sample_centre(stripes=())
    assert codes(refused) == [("stripes", "missing")]


def test_a_join_with_yarn_of_its_own_has_a_colour() -> None:
    assert MotifJoin(method=JoinMethod.AS_YOU_GO).colour is None
    with pytest.raises(Refused) as refused:
        MotifJoin(method=JoinMethod.MATTRESS)
    assert codes(refused) == [("colour", "missing")]


def test_two_joined_squares_tell_the_side_of_one() -> None:
    motif = sample_motif(one_side_cm=None, two_joined_cm=31)
    assert motif.side_cm == 15.5
