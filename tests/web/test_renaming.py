"""What is renamed in the workshop is renamed in the orders that are not yet quoted."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from types import MappingProxyType

import pytest

from quoting.core.order.design import ColourSource
from quoting.core.order.joined_squares import JoinedSquares, Pool
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.store.order_content import OrderContent, Overtaken
from quoting.store.orders import create_order, kept_order, save_order
from tests.examples import sample_design, sample_order, section
from tests.motif_examples import SQUARE, centre_order, sample_centre, sample_squares, squares_order
from tests.store.given import put_at
from tests.web.book_pages import BEGINNING
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.rich_workshop import rich

TYPED = MappingProxyType(
    {
        "order.title": ("oat",),
        "blanket.yarn": ("moor aran",),
        "blanket.stitch": ("moss stitch",),
        "blanket.sections.1.stripes.1.colour": ("teal",),
        "blanket.sections.1.stripes.2.colour": ("oat",),
        "blanket.last_rows.as_list": ("teal, 2\n\noat 3\n rust; 1; moss stitch\nnobody's , 1",),
        "blanket.colours.1.name": ("teal",),
        "blanket.colours.1.yarn": ("moor aran",),
        "blanket.colours.1.colour": ("oat",),
    }
)


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, rich()) as someone:
        yield someone


def asked() -> Order:
    """Return an order in which `teal` is not the yarn's teal, but its oat."""
    design = sample_design(
        stitch="moss stitch",
        sections=(section("teal", "oat", "rust", share=1),),
        colours={"teal": ColourSource(yarn="moor aran", colour="oat")},
    )
    return sample_order(design=design)


def squares_asked() -> Order:
    """Return an order of squares whose last rounds are oat."""
    pool = Pool(colours=("teal", "rust"), outer=("oat",))
    return squares_order(body=sample_squares(layouts=(), pool=pool), border=())


SQUARES_TYPED = MappingProxyType(
    {
        "blanket.yarn": ("moor aran",),
        "blanket.squares.motif": (SQUARE,),
        "blanket.squares.layouts.1.colours.1.value": ("teal",),
        "blanket.squares.layouts.1.colours.2.value": ("oat",),
        "blanket.squares.pool.outer.1.value": ("oat",),
        "blanket.squares.join.colour": ("oat",),
        "blanket.centre.motif": (SQUARE,),
    }
)


def order_in(maker: OwnMaker) -> int:
    content = OrderContent(typed=TYPED, title="Cot blanket", order=asked())
    return create_order(maker.book, content, now=BEGINNING, writer="a page").id


def rename(maker: OwnMaker) -> None:
    """Give the yarn, one of its colours and a pattern other names."""
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__name="fell aran", yarns__1__colours__1__name="chalk")
    maker.open("/measurements")
    maker.press("/measurements", patterns__1__name="heather stitch")


def test_an_order_that_is_not_yet_quoted_follows_typed_and_worked_out(maker: OwnMaker) -> None:
    order_id = order_in(maker)
    rename(maker)
    assert (maker.status, maker.version) == (200, 3)
    content = kept_order(maker.book, order_id).content
    assert content.typed == {
        "order.title": ("oat",),
        "blanket.yarn": ("fell aran",),
        "blanket.stitch": ("heather stitch",),
        "blanket.sections.1.stripes.1.colour": ("teal",),
        "blanket.sections.1.stripes.2.colour": ("chalk",),
        "blanket.last_rows.as_list": (
            "teal, 2\n\nchalk, 3\nrust, 1, heather stitch\nnobody's , 1",
        ),
        "blanket.colours.1.name": ("teal",),
        "blanket.colours.1.yarn": ("fell aran",),
        "blanket.colours.1.colour": ("chalk",),
    }
    assert content.order is not None
    design = content.order.design
    assert (design.yarn, design.stitch) == ("fell aran", "heather stitch")
    assert design.colours == {"teal": ColourSource(yarn="fell aran", colour="chalk")}
    (made,) = design.body.sections
    assert [stripe.colour for stripe in made.stripes] == ["teal", "chalk", "rust"]


def test_a_page_that_was_open_meanwhile_does_not_bring_the_old_names_back(maker: OwnMaker) -> None:
    order_id = order_in(maker)
    rename(maker)
    late = OrderContent(typed=TYPED, title="Late", order=asked())
    answer = save_order(maker.book, order_id, late, revision=1, writer="a page", now=BEGINNING)
    assert isinstance(answer, Overtaken)
    assert answer.kept.content.typed["blanket.yarn"] == ("fell aran",)


def test_a_quoted_order_keeps_its_names_and_the_page_says_where_they_are(maker: OwnMaker) -> None:
    order_id = order_in(maker)
    put_at(maker.book, order_id, Stage.QUOTED)
    maker.open("/yarn")
    page = maker.press("/yarn", yarns__1__name="fell aran")
    assert (maker.status, maker.version) == (422, 1)
    assert "Cot blanket : moor aran" in page.with_id("main").text
    assert kept_order(maker.book, order_id).content.typed == TYPED


def test_a_colour_is_not_given_the_name_of_another_in_an_order(maker: OwnMaker) -> None:
    """In the order, teal is oat already: rust that became teal would be oat, too."""
    order_in(maker)
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__colours__2__name="sea", yarns__1__colours__3__name="teal")
    assert (maker.status, maker.version) == (422, 1)


def test_a_colour_that_is_taken_out_of_a_renamed_yarn_is_missed_all_the_same(
    maker: OwnMaker,
) -> None:
    order_in(maker)
    maker.open("/yarn")
    maker.press("/yarn", "remove yarns.1.colours.3")
    page = maker.press("/yarn", yarns__1__name="fell aran")
    assert (maker.status, maker.version) == (422, 1)
    assert "Cot blanket : fell aran, rust" in page.with_id("main").text


# -- motifs, and the colours of squares ------------------------------------------------------------


def squares_in(maker: OwnMaker, order: Order | None) -> int:
    """Keep an order of squares in the book, whole or still being typed."""
    content = OrderContent(typed=SQUARES_TYPED, title="Squares", order=order)
    return create_order(maker.book, content, now=BEGINNING, writer="a page").id


def test_an_order_of_squares_follows_its_motif_and_its_colours(maker: OwnMaker) -> None:
    order_id = squares_in(maker, squares_asked())
    maker.open("/measurements")
    maker.press("/measurements", motifs__1__name="sun")
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__colours__1__name="chalk")
    assert (maker.status, maker.version) == (200, 3)
    content = kept_order(maker.book, order_id).content
    assert content.typed == {
        "blanket.yarn": ("moor aran",),
        "blanket.squares.motif": ("sun",),
        "blanket.squares.layouts.1.colours.1.value": ("teal",),
        "blanket.squares.layouts.1.colours.2.value": ("chalk",),
        "blanket.squares.pool.outer.1.value": ("chalk",),
        "blanket.squares.join.colour": ("chalk",),
        "blanket.centre.motif": ("sun",),
    }
    assert content.order is not None
    body = content.order.design.body
    assert isinstance(body, JoinedSquares)
    assert (body.motif, body.join.colour) == ("sun", "chalk")
    assert body.pool == Pool(colours=("teal", "rust"), outer=("chalk",))


@pytest.mark.parametrize("order", [squares_asked(), None], ids=["whole", "half typed"])
@pytest.mark.parametrize(
    ("page", "line", "lost"),
    [
        ("measurements", "motifs.1", SQUARE),
        ("yarn", "yarns.1.colours.1", "moor aran, oat"),
    ],
)
def test_a_motif_or_a_colour_of_squares_is_not_taken_out_in_silence(
    maker: OwnMaker, order: Order | None, page: str, line: str, lost: str
) -> None:
    squares_in(maker, order)
    maker.open("/yarn")
    maker.press("/yarn", "remove yarns.1.stock.1")
    maker.press("/yarn")
    maker.open(f"/{page}")
    maker.press(f"/{page}", f"remove {line}")
    told = maker.press(f"/{page}").with_id("main").text
    assert maker.status == 422
    assert f"Squares : {lost}" in told


def test_a_quoted_order_keeps_its_motif_and_the_page_says_where_it_is(maker: OwnMaker) -> None:
    order_id = squares_in(maker, squares_asked())
    put_at(maker.book, order_id, Stage.QUOTED)
    maker.open("/measurements")
    page = maker.press("/measurements", motifs__1__name="sun")
    assert (maker.status, maker.version) == (422, 1)
    assert f"Squares : {SQUARE}" in page.with_id("main").text


def rounds_with_squares_at_rest(maker: OwnMaker) -> int:
    """Keep an order in rounds in the book, whose form holds squares that were typed before."""
    typed = SQUARES_TYPED | {"blanket.construction": ("centre",), "blanket.centre.motif": ("",)}
    order = centre_order(body=sample_centre("teal"))
    content = OrderContent(typed=MappingProxyType(typed), title="Rounds", order=order)
    return create_order(maker.book, content, now=BEGINNING, writer="a page").id


@pytest.mark.parametrize("stage", [Stage.ASKED, Stage.QUOTED])
def test_squares_that_rest_in_the_form_of_an_order_in_rounds_follow_their_motif(
    maker: OwnMaker, stage: Stage
) -> None:
    """No order is read from them, so that they keep nobody from renaming one; yet they follow."""
    order_id = rounds_with_squares_at_rest(maker)
    if stage is not Stage.ASKED:
        put_at(maker.book, order_id, stage)
    revision = kept_order(maker.book, order_id).revision
    maker.open("/measurements")
    maker.press("/measurements", motifs__1__name="sun")
    assert (maker.status, maker.version) == (200, 2)
    kept = kept_order(maker.book, order_id)
    assert kept.content.typed["blanket.squares.motif"] == ("sun",)
    assert kept.revision == revision + (stage is Stage.ASKED)


def test_what_rests_in_a_finished_order_stays_as_it_was_typed(maker: OwnMaker) -> None:
    order_id = rounds_with_squares_at_rest(maker)
    put_at(maker.book, order_id, Stage.HANDED_OVER)
    maker.open("/measurements")
    maker.press("/measurements", motifs__1__name="sun")
    assert kept_order(maker.book, order_id).content.typed["blanket.squares.motif"] == (SQUARE,)
