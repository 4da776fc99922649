"""The last round of all motifs is followed side by side, as it is told, without a cut.

A right-handed maker with the right side facing goes leftwards along upper sides, and so round each
motif against the clock; a left-handed one is her mirror image (common practice).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from quoting.core.guide.guide import guide_of
from quoting.core.making.made_rows import made_rows
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits
from quoting.wording.guide import guide_paper
from quoting.wording.paper import Words
from quoting.wording.row_at_hand import row_at_hand
from quoting.wording.speech import speech_of
from tests.constructed import constructed_quote, motif_workshop, squares
from tests.guide.follower import all_blocks
from tests.guide.squares_follower import lists

Corner = tuple[int, int]
Side = tuple[int, int, str]
"""The column and the row of its motif, from 0 at the upper right-hand corner, and its name."""

CORNERS: dict[str, tuple[Corner, Corner]] = {
    "upper": ((0, 0), (1, 0)),
    "left-hand": ((1, 0), (1, 1)),
    "lower": ((1, 1), (0, 1)),
    "right-hand": ((0, 1), (0, 0)),
}
"""From which corner of its motif to which a side is worked; columns are counted leftwards."""

ACROSS = {"left-hand": "right-hand", "right-hand": "left-hand", "upper": "lower", "lower": "upper"}
BESIDE = {"left-hand": (1, 0), "right-hand": (-1, 0), "upper": (0, -1), "lower": (0, 1)}
SIDE = r"(upper|lower|left-hand|right-hand) sides?"


def joined_in_one(columns: int, rows: int, *, left_handed: bool = False) -> Quote:
    body = squares(JoinMethod.CONTINUOUS, layouts=squares().layouts[1:], columns=columns, rows=rows)
    shop = motif_workshop(habits=Habits(left_handed=left_handed))
    return constructed_quote(body, shop)


def told(quote: Quote) -> tuple[str, ...]:
    blocks = all_blocks(guide_paper(quote).blocks)
    return next(b.texts for b in blocks if isinstance(b, Words) and b.heading == "Joining")


def worked(texts: tuple[str, ...], columns: int, rows: int) -> Iterator[Side]:
    """Yield every side in the order that the words have it."""
    along = next(text for text in texts if text.startswith(("Go along the row", "Work the upper")))
    first, *others = (re.findall(SIDE, part) for part in along.split(";"))
    after, last = others or ([], [])
    for row in range(rows):
        for column in range(columns):
            of_last = last if columns > 1 and column == columns - 1 else []
            for name in [*(after if column else first), *of_last]:
                yield column, row, name
        if columns > 1:
            (back,) = (re.search(SIDE, text) for text in texts if text.startswith("Then come back"))
            assert back
            for column in reversed(range(columns - 1)):
                yield column, row, back[1]
    (end,) = (text for text in texts if text.startswith(("Last of all, work", "Close with")))
    closing = re.search(SIDE, end)
    assert closing
    for row in reversed(range(rows)):
        yield 0, row, closing[1]


def ends_of(side: Side) -> tuple[Corner, Corner]:
    column, row, name = side
    (x, y), (to_x, to_y) = CORNERS[name]
    return (column + x, row + y), (column + to_x, row + to_y)


GRIDS = [(8, 11), (5, 1), (1, 5), (2, 2), (2, 1), (1, 2)]


@pytest.mark.parametrize(("columns", "rows"), GRIDS)
def test_every_side_is_worked_once_without_a_cut_back_to_where_it_began(
    columns: int, rows: int
) -> None:
    sides = list(worked(told(joined_in_one(columns, rows)), columns, rows))
    assert len(sides) == len(set(sides)) == 4 * columns * rows
    at: Corner = (0, 0)
    for side in sides:
        begins, at_end = ends_of(side)
        assert begins == at, side
        at = at_end
    assert at == (0, 0)


@pytest.mark.parametrize(("columns", "rows"), GRIDS)
def test_only_upper_sides_and_those_into_the_motif_before_meet_one_that_is_there(
    columns: int, rows: int
) -> None:
    quote = joined_in_one(columns, rows)
    done: set[Side] = set()
    joined: list[str] = []
    for column, row, name in worked(told(quote), columns, rows):
        x, y = BESIDE[name]
        if (column + x, row + y, ACROSS[name]) in done:
            joined.append(name)
        done.add((column, row, name))
    grid = quote.plan.grid
    assert grid is not None
    assert len(joined) == grid.shared_edges
    assert set(joined) <= {"upper", "right-hand"}


def test_for_a_left_handed_maker_it_is_mirrored() -> None:
    mirrored = " ".join(told(joined_in_one(3, 4, left_handed=True)))
    swapped = {"left-hand": "right-hand", "right-hand": "left-hand"}
    plain = " ".join(told(joined_in_one(3, 4)))
    assert mirrored == re.sub("left-hand|right-hand", lambda found: swapped[found[0]], plain)


def test_no_join_is_spoken_of_before_there_is_one() -> None:
    step, *_ = (said for (said,) in lists(guide_paper(joined_in_one(3, 4)))["Step by step"].rows)
    assert step == (
        "Joining rows 1 to 4, oat: 180 dc each. Start it at the beginning of the round; fasten it "
        "off at the beginning of the round."
    )


def test_each_row_at_hand_says_where_it_goes_and_the_last_how_it_is_closed() -> None:
    quote = joined_in_one(3, 4)
    rows, guide, speech = made_rows(quote), guide_of(quote), speech_of(quote.workshop)
    first, second, *_, last = (row_at_hand(guide, rows, 12 + n, speech) for n in range(1, 5))
    assert first.name == "Joining row 1"
    assert first.details[0] == "Begin at the upper right-hand corner of the top row."
    assert first.yarn == ("Start it at the beginning of the round.",)
    assert second.details[0].startswith("Go down to the upper right-hand corner of this row; ")
    assert not any("Last of all" in detail for detail in second.details)
    assert any("Last of all" in detail for detail in last.details)
    assert last.yarn == ("Fasten it off at the beginning of the round.",)
    for row in (first, second, last):
        assert any(detail.startswith("Go along the row: ") for detail in row.details)
        assert "counted with the right-hand side of its first motif" in row.details[-1]
