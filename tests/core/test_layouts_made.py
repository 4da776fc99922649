"""The layouts of joined motifs as they come out, and what a buyer is told of them."""

from __future__ import annotations

import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.order.joined_squares import JoinMethod, Layout, MotifJoin, Pool
from quoting.core.order.order import Order
from quoting.core.plan.layout_colours import joined_in, layouts_made
from quoting.core.plan.parts import PartKind
from quoting.core.quote.offer import offer_of
from quoting.core.quote.offered_motifs import OfferedMotifs, offered_motifs
from quoting.core.quote.quote import Quote
from quoting.core.quote.what_goes_in import GoesIn
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.rounds import Counting
from quoting.schema.offer_shape import offer_record, read_offer
from tests.examples import sample_quote
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)

OTHER = ("plum", "moss", "teal", "teal", "oat")


def quoted(order: Order, **workshop: Any) -> Quote:
    return sample_quote(order, motif_workshop(**workshop))


def squares(*layouts: tuple[str, ...], **body: Any) -> Quote:
    return quoted(squares_order(body=sample_squares(*layouts, **body)))


def test_a_layout_has_its_colours_round_by_round_and_its_number_of_motifs() -> None:
    first, second = layouts_made(squares(FIVE, OTHER).plan)
    assert (first.number, first.count, first.colours) == (1, 44, FIVE)
    assert (second.number, second.count, second.colours) == (2, 44, OTHER)
    assert second.banded == ("plum", "moss", "teal", "oat")


@pytest.mark.parametrize("method", JoinMethod)
def test_its_rounds_are_as_high_as_half_of_its_side_however_it_is_joined(
    method: JoinMethod,
) -> None:
    colour = None if method is JoinMethod.AS_YOU_GO else "oat"
    (layout,) = layouts_made(squares(FIVE, join=MotifJoin(method=method, colour=colour)).plan)
    assert layout.colours == FIVE
    assert sum(layout.heights_cm) == pytest.approx(15 / 2)


def test_a_blanket_in_one_piece_has_no_layouts_and_no_join() -> None:
    plan = quoted(centre_order()).plan
    assert layouts_made(plan) == ()
    assert joined_in(plan) is None
    assert sample_quote().plan.grid is None


def test_an_offer_of_motifs_tells_them_their_layouts_and_their_join() -> None:
    sewn = MotifJoin(method=JoinMethod.WHIPSTITCH, colour="rust")
    quote = squares(FIVE, OTHER, join=sewn)
    expected = OfferedMotifs(
        columns=8, rows=11, side_cm=15, layouts=2, join=JoinMethod.WHIPSTITCH, join_colour="rust"
    )
    assert offered_motifs(quote) == offer_of(quote).motifs == expected
    assert expected.count == 88
    assert offer_of(quote).centre is None


def test_an_offer_of_motifs_from_a_pool_tells_that_they_are_mixed() -> None:
    pool = replace(sample_squares(), layouts=(), pool=Pool(colours=FIVE[:4], outer=FIVE[4:]))
    motifs = offered_motifs(quoted(squares_order(body=pool)))
    assert motifs is not None
    assert motifs.mixed


def test_a_join_in_the_last_rounds_has_no_colour_of_its_own() -> None:
    motifs = offered_motifs(squares(FIVE))
    assert motifs is not None
    assert motifs.join_colour is None


def test_an_offer_of_one_piece_tells_how_it_grows_and_one_in_rows_does_not() -> None:
    circle = quoted(centre_order(body=sample_centre(counting=Counting.CIRCLE)))
    assert circle.plan.centre is offer_of(circle).centre is Counting.CIRCLE
    assert offer_of(circle).motifs is None
    plain = offer_of(sample_quote())
    assert (plain.centre, plain.motifs) == (None, None)


@pytest.mark.parametrize("order", [squares_order(), centre_order()])
def test_an_offer_is_the_same_after_its_record(order: Order) -> None:
    offer = offer_of(quoted(order))
    assert read_offer(json.loads(json.dumps(offer_record(offer)))) == offer


def test_colours_of_motifs_come_by_what_they_take_and_of_others_as_they_are_worked() -> None:
    quote = squares(FIVE)
    metres = {colour.colour: colour.metres for colour in quote.estimate.colours}
    names = [colour.name for colour in offer_of(quote).colours]
    assert names == sorted(names, key=metres.__getitem__, reverse=True) != list(FIVE)
    centre = quoted(centre_order(body=sample_centre("teal", "rust")))
    assert [colour.name for colour in offer_of(centre).colours] == ["teal", "rust"]


def test_motifs_are_of_their_own_stitch_whatever_the_order_says() -> None:
    quote = quoted(squares_order(body=sample_squares(FIVE), stitch="hdc"))
    assert offer_of(quote).stitch == "dc"


def test_motifs_that_lie_otherwise_are_another_offer_with_another_number() -> None:
    """As many of the one layout and of the other, at one price, but laid the other way round."""
    here, there = FIVE, ("rust", "teal", *FIVE[2:])
    quote, turned = squares(here, there), squares(there, here)
    assert quote.plan.grid == turned.plan.grid
    assert quote.number != turned.number
    few = (Layout(colours=here, count=40), Layout(colours=there, count=48))
    many = (Layout(colours=here, count=48), Layout(colours=there, count=40))
    assert squares(layouts=few).number != squares(layouts=many).number


@pytest.mark.parametrize("method", [JoinMethod.AS_YOU_GO, JoinMethod.CONTINUOUS])
def test_motifs_and_the_rounds_of_every_one_go_in(method: JoinMethod) -> None:
    """88 motifs of five rounds are 440, also where the last ones join them in one go."""
    order = squares_order(body=sample_squares(FIVE, method=method))
    assert goes_in(order) == {GoesIn.MOTIFS: 88, GoesIn.ROUNDS: 440}


def test_rounds_of_one_piece_go_in() -> None:
    assert goes_in(centre_order(body=sample_centre(rounds=12))) == {GoesIn.ROUNDS: 12}


def goes_in(order: Order) -> dict[GoesIn, Decimal]:
    offer = offer_of(quoted(order, documents=Documents(rows=True)))
    return {one.code: one.amount for one in offer.goes_in}


def test_the_round_that_joins_all_motifs_is_none_of_their_own() -> None:
    joined, alone = (
        layouts_made(squares(FIVE, method=method).plan)[0]
        for method in (JoinMethod.CONTINUOUS, JoinMethod.AS_YOU_GO)
    )
    assert joined.colours == alone.colours == alone.own_colours == FIVE
    assert (joined.own_colours, joined.joined_on) == (FIVE[:-1], 1)
    assert (joined.ends_each, alone.ends_each) == (8, 10)


def test_motifs_of_all_layouts_are_numbered_together() -> None:
    """8 × 11 motifs in two layouts: the first of the second comes after the 44 of the first."""
    plan = squares(FIVE, OTHER).plan
    assert plan.copies_of(PartKind.MOTIF) == 88
    ends = [plan.number_of(part, copy) for part in (0, 1) for copy in (0, 43)]
    assert ends == [1, 44, 45, 88]


@pytest.mark.parametrize(
    ("counting", "spaces"),
    [
        (Counting.CLUSTERS, True),
        (Counting.SOLID, False),
        (Counting.CIRCLE, None),
        (Counting.HEXAGON, None),
    ],
)
def test_an_offer_tells_whether_a_square_has_spaces(
    counting: Counting,
    spaces: bool | None,  # noqa: FBT001 - a parameter
) -> None:
    piece = quoted(centre_order(body=sample_centre(counting=counting)))
    assert offer_of(piece).spaces is spaces


def test_an_offer_tells_whether_its_motifs_have_spaces_and_one_in_rows_does_not() -> None:
    assert offer_of(squares(FIVE)).spaces is True
    assert offer_of(sample_quote()).spaces is None
