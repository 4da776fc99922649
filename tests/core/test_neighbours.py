"""The next smaller and larger blankets: one count less and one more, each an order of its own."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows, StopAt
from quoting.core.order.joined_squares import JoinedSquares, Layout
from quoting.core.order.order import Order
from quoting.core.plan.body_plans import PLANS
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.weighing.closing import Counted, closing_of
from quoting.core.weighing.neighbours import NEAR, Neighbour, has_neighbours, neighbours
from quoting.core.weighing.variations import Varied
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import (
    TODAY,
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    section,
    stripes,
)
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

BANDED = section("teal", "rust", "oat", rows=2)
WORKSHOP = motif_workshop()


def quoted(order: Order | None = None, workshop: Workshop | None = None) -> Quote:
    return quote_order(order or sample_order(), workshop or WORKSHOP, today=TODAY)


def in_rows(**changes: Any) -> Quote:
    return quoted(sample_order(design=sample_design(**changes)))


def near(quote: Quote) -> dict[tuple[Varied, bool], Neighbour]:
    return {(n.varied, n.more): n for n in neighbours(quote, today=TODAY)}


def counts(neighbour: Neighbour, *counted: Counted) -> tuple[int, ...]:
    return tuple(neighbour.closing.counts[each] for each in counted)


EVERY_KIND = [
    quoted(),
    in_rows(sections=(BANDED,)),
    quoted(squares_order()),
    quoted(centre_order()),
]


def test_every_construction_has_neighbours() -> None:
    assert NEAR.keys() == PLANS.keys()


@pytest.mark.parametrize("quote", EVERY_KIND)
def test_each_is_the_quote_of_its_own_order_and_off_from_the_size_that_was_asked(
    quote: Quote,
) -> None:
    design = quote.order.design
    for neighbour in neighbours(quote, today=TODAY):
        again = quote_order(neighbour.quote.order, quote.workshop, today=TODAY)
        assert again == neighbour.quote
        plan, closing = again.plan, neighbour.closing
        assert closing.off_width_cm == pytest.approx(plan.width_cm - design.width_cm)
        assert closing.off_height_cm == pytest.approx(plan.height_cm - design.height_cm)


@pytest.mark.parametrize("quote", EVERY_KIND)
def test_one_less_is_smaller_and_one_more_is_larger_and_nothing_else_changes(quote: Quote) -> None:
    own = closing_of(quote).counts
    for neighbour in neighbours(quote, today=TODAY):
        sides = [(q.plan.width_cm, q.plan.height_cm) for q in (quote, neighbour.quote)]
        assert (sum(sides[1]) > sum(sides[0])) is neighbour.more
        changed = {
            c
            for c in {*own, *neighbour.closing.counts}
            if own.get(c, 0) != neighbour.closing.counts.get(c, 0)
        }
        assert len(changed - {Counted.MOTIFS}) == 1


def test_a_blanket_in_rows_goes_by_a_stitch_a_repeat_and_a_border_round() -> None:
    """98 stitches, 103 rows in repeats of three and one row before them (model, parts 3 and 4)."""
    found = near(quoted())
    assert [name for name, _ in found][::2] == [Varied.STITCHES, Varied.REPEAT, Varied.BORDER_ROUND]
    both = Counted.STITCHES, Counted.ROWS
    assert counts(found[Varied.STITCHES, False], *both) == (97, 103)
    assert counts(found[Varied.STITCHES, True], *both) == (99, 103)
    assert counts(found[Varied.REPEAT, False], *both) == (98, 100)
    assert counts(found[Varied.REPEAT, True], *both) == (98, 106)
    assert Counted.BORDER_ROUNDS not in found[Varied.BORDER_ROUND, False].closing.counts
    assert counts(found[Varied.BORDER_ROUND, True], *both, Counted.BORDER_ROUNDS) == (98, 103, 2)


def test_a_pattern_goes_by_its_stitch_repeat() -> None:
    fans = Pattern(name="fans", like=Stitch.HDC, multiple=7, plus=1)
    workshop = sample_workshop(patterns=(fans,))
    quote = quoted(sample_order(design=sample_design(stitch="fans")), workshop)
    found = near(quote)
    across = [found[Varied.STITCH_REPEAT, more].quote.plan.stitches for more in (False, True)]
    assert across == [quote.plan.stitches - 7, quote.plan.stitches + 7]


@pytest.mark.parametrize(
    ("stop_at", "varied", "steps"),
    [
        (StopAt.REPEAT, Varied.REPEAT, (-6, 6)),
        (StopAt.STRIPE, Varied.STRIPE, (-2, 2)),
        (StopAt.ROW, Varied.ROW, (-1, 1)),
    ],
)
@pytest.mark.parametrize("height_cm", [98.0, 100.0, 101.0, 103.0])
def test_the_last_section_goes_by_where_it_may_stop(
    stop_at: StopAt, varied: Varied, steps: tuple[int, int], height_cm: float
) -> None:
    quote = in_rows(sections=(BANDED,), stop_at=stop_at, height_cm=height_cm)
    found = near(quote)
    rows = [len(found[varied, more].quote.plan.rows) for more in (False, True)]
    assert rows == [len(quote.plan.rows) + step for step in steps]


def test_of_several_open_sections_only_the_last_is_varied() -> None:
    shared = (section("teal", "rust", "oat", rows=2, share=1), section("plum", "moss", share=2))
    quote = in_rows(sections=shared)
    found = near(quote)
    first, last = quote.plan.section_repeats
    assert found[Varied.REPEAT, False].quote.plan.section_repeats == (first, last - 1)
    assert found[Varied.REPEAT, True].quote.plan.section_repeats == (first, last + 1)


def test_stripes_that_are_fitted_go_by_a_row() -> None:
    quote = in_rows(sections=(replace(BANDED, fitted=True),))
    found = near(quote)
    rows = [len(found[Varied.ROW, more].quote.plan.rows) for more in (False, True)]
    assert rows == [len(quote.plan.rows) - 1, len(quote.plan.rows) + 1]


def test_the_makers_own_stitches_and_repeats_are_what_is_varied() -> None:
    quote = in_rows(sections=(replace(BANDED, repeats=14),), stitches=101)
    body = quote.order.design.body
    assert isinstance(body, InRows)
    found = near(quote)
    assert found[Varied.STITCHES, True].quote.order.design.body == replace(body, stitches=102)
    fewer = replace(body, sections=(replace(BANDED, repeats=13),))
    assert found[Varied.REPEAT, False].quote.order.design.body == fewer
    assert found[Varied.REPEAT, False].quote.order.design.height_cm == quote.order.design.height_cm


def test_rows_of_unlike_stitches_keep_the_width_of_the_blankets_own() -> None:
    design = sample_design(
        sections=(section("teal", "rust"), replace(section("oat"), stripes=_tall())),
    )
    quote = quoted(sample_order(design=design))
    found = near(quote)
    bordered = found[Varied.BORDER_ROUND, True].quote.plan
    assert bordered.stitches == quote.plan.stitches
    assert found[Varied.STITCHES, True].quote.plan.stitches == quote.plan.stitches + 1


def _tall() -> Any:
    return tuple(replace(stripe, stitch="dc") for stripe in stripes("oat", rows=2))


def test_what_would_be_refused_is_left_out() -> None:
    single = in_rows(sections=(section("teal", "rust", repeats=1),), first_rows=())
    assert (Varied.REPEAT, False) not in near(single)
    assert (Varied.REPEAT, True) in near(single)


def test_squares_go_by_a_column_and_a_row_of_motifs() -> None:
    """8 × 11 = 88 motifs of 15 cm."""
    found = near(quoted(squares_order()))
    grid = Counted.COLUMNS, Counted.MOTIF_ROWS, Counted.MOTIFS
    assert counts(found[Varied.COLUMN, False], *grid) == (7, 11, 77)
    assert counts(found[Varied.COLUMN, True], *grid) == (9, 11, 99)
    assert counts(found[Varied.MOTIF_ROW, False], *grid) == (8, 10, 80)
    assert counts(found[Varied.MOTIF_ROW, True], *grid) == (8, 12, 96)
    wider = found[Varied.COLUMN, True].closing
    assert wider.off_width_cm - found[Varied.COLUMN, False].closing.off_width_cm == pytest.approx(
        30
    )


def test_squares_that_are_counted_out_keep_their_proportions_with_a_row_more() -> None:
    one, other = Layout(colours=FIVE, count=44), Layout(colours=FIVE[::-1], count=44)
    body = replace(sample_squares(), layouts=(one, other), columns=8, rows=11)
    found = near(quoted(squares_order(body=body)))
    more = found[Varied.MOTIF_ROW, True].quote.plan
    assert [part.count for part in more.parts if part.layout is not None] == [48, 48]
    bordered = found[Varied.BORDER_ROUND, True].quote.order.design.body
    assert isinstance(bordered, JoinedSquares)
    assert bordered.layouts == body.layouts


def test_one_column_has_no_neighbour_of_none() -> None:
    body = replace(sample_squares(), columns=1, rows=3)
    found = near(quoted(squares_order(body=body, border=())))
    assert set(found) == {
        (Varied.COLUMN, True),
        (Varied.MOTIF_ROW, False),
        (Varied.MOTIF_ROW, True),
    }


def test_a_border_round_adds_the_same_to_both_sides_of_squares() -> None:
    quote = quoted(squares_order())
    found = near(quote)
    own = closing_of(quote)
    more = found[Varied.BORDER_ROUND, True].closing
    assert more.off_width_cm - own.off_width_cm == pytest.approx(1.9)
    assert more.off_height_cm - own.off_height_cm == pytest.approx(1.9)


def test_a_rectangle_from_the_centre_goes_by_a_round_and_by_the_stitch_it_is_longer_by() -> None:
    """34 rounds on 26 extra stitches."""
    quote = quoted(centre_order())
    found = near(quote)
    both = Counted.ROUNDS, Counted.STARTS_ON
    assert tuple(closing_of(quote).counts[each] for each in both) == (34, 26)
    assert counts(found[Varied.ROUND, False], *both) == (33, 26)
    assert counts(found[Varied.ROUND, True], *both) == (35, 26)
    assert counts(found[Varied.START, False], *both) == (34, 25)
    assert counts(found[Varied.START, True], *both) == (34, 27)


@pytest.mark.parametrize("counting", [Counting.CIRCLE, Counting.HEXAGON, Counting.SOLID])
def test_what_is_no_rectangle_is_never_made_longer(counting: Counting) -> None:
    body = replace(sample_centre("teal", "oat"), counting=counting)
    found = near(quoted(centre_order(body=body, height_cm=75, border=(band(),))))
    assert {varied for varied, _ in found} == {Varied.ROUND, Varied.BORDER_ROUND}


def test_clusters_are_longer_by_clusters() -> None:
    """Clusters n = 10, e = 5: 960 stitches."""
    body = replace(sample_centre(), counting=Counting.CLUSTERS, rounds=10, starts_on=5)
    quote = quoted(centre_order(body=body))
    assert sum(worked.stitches["dc"] for worked in quote.plan.passes) == 960
    assert closing_of(quote).counts[Counted.STARTS_ON] == 5
    longer = near(quote)[Varied.START, True].quote.plan
    assert sum(worked.stitches["dc"] for worked in longer.passes) == 960 + 10 * 6


def test_own_repeats_of_rounds_are_what_is_varied() -> None:
    body = replace(sample_centre("teal", "oat"), repeats=10)
    found = near(quoted(centre_order(body=body)))
    assert counts(found[Varied.ROUND_REPEAT, True], Counted.ROUNDS) == (22,)
    varied = found[Varied.ROUND_REPEAT, False].quote.order.design.body
    assert isinstance(varied, FromCentre)
    assert (varied.repeats, varied.rounds) == (9, None)


def test_an_order_too_large_to_vary_is_refused() -> None:
    many = sample_order(design=sample_design(height_cm=1000.0), quantity=30)
    quote = sample_quote(many)
    assert not has_neighbours(quote)
    with pytest.raises(Refused, match="too-large-to-vary"):
        neighbours(quote, today=TODAY)
    assert has_neighbours(quoted(squares_order()))


def test_a_hexagon_is_never_longer_by_a_stitch() -> None:
    """A hair between two sums of its size makes no other blanket of it."""
    for width in range(40, 80, 5):
        body = sample_centre(counting=Counting.HEXAGON)
        quote = quoted(centre_order(body=body, width_cm=width, border=(band(rounds=2),)))
        assert {varied for varied, _ in near(quote)} == {Varied.ROUND, Varied.BORDER_ROUND}
