"""Joined motifs on the worktable: typed, told, counted, and the same as their file."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.order.joined_squares import SEWN, JoinMethod, Layout, MotifJoin, Pool
from tests.web.motif_orders import (
    FIVE,
    MotifMaker,
    form_sends_its_file,
    order_of,
    squares_body,
    text_of,
)
from tests.web.pages import Page

SQUARES = "blanket.squares"
LAYOUTS = f"{SQUARES}.layouts"

BODIES = {
    "shares": squares_body(),
    "counts": squares_body(
        columns=3, rows=2, layouts=(Layout(colours=FIVE, count=6),), blocked=True
    ),
    "a pool": squares_body(layouts=(), pool=Pool(colours=FIVE[:3], outer=("oat",))),
    "fewer rounds": squares_body(rounds=2, layouts=(Layout(colours=FIVE[:2]),)),
    **{
        method: squares_body(join=MotifJoin(method=method, colour="oat", added_cm=0.5))
        for method in JoinMethod
        if method is not JoinMethod.CONTINUOUS
    },
    "continuous": squares_body(
        layouts=(Layout(colours=FIVE),),
        join=MotifJoin(method=JoinMethod.CONTINUOUS, colour="oat"),
    ),
    "short needlefuls": squares_body(
        join=MotifJoin(method=JoinMethod.MATTRESS, colour="oat", needleful_cm=90)
    ),
}


@pytest.fixture
def maker() -> MotifMaker:
    return MotifMaker(order_of(squares_body()))


@pytest.fixture
def wide() -> MotifMaker:
    """Return the maker of a blanket of 8 by 11 squares."""
    return MotifMaker(order_of(squares_body(), width_cm=130, height_cm=170))


def colours(page: Page, layout: int) -> list[str]:
    """Return the colours of a layout, from the centre."""
    begins = f"{LAYOUTS}.{layout}.colours."
    return [text for name, text in page.typed().items() if name.startswith(begins)]


@pytest.mark.parametrize("name", BODIES)
def test_what_the_form_sends_is_the_order_of_its_file(name: str) -> None:
    form_sends_its_file(order_of(BODIES[name]))


# -- motif and layouts -----------------------------------------------------------------------------


def test_a_motif_is_offered_with_its_rounds_its_side_and_its_weight(maker: MotifMaker) -> None:
    options = [option.text for option in maker.open().with_id(f"{SQUARES}.motif").all("option")]
    assert options == ["fen square: 5 rounds, 15 cm, 12 g", "reed square: 3 rounds, 9 cm, 12 g"]


def test_another_motif_keeps_the_colours_that_fit(maker: MotifMaker) -> None:
    fewer = maker.sends(maker.open(), blanket__squares__motif="reed square", do="motif")
    assert [colours(fewer, n) for n in (1, 2)] == [
        ["teal", "rust", "plum"],
        ["oat", "moss", "plum"],
    ]
    assert fewer.with_id("mistakes").text == ""
    more = maker.sends(fewer, blanket__squares__motif="fen square", do="motif")
    assert colours(more, 1) == ["teal", "rust", "plum", "plum", "plum"]


def test_rounds_of_her_own_make_room_for_as_many_colours(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), blanket__squares__rounds="2", do="motif")
    assert colours(page, 1) == ["teal", "rust"]
    unread = maker.sends(page, blanket__squares__rounds="two", do="motif")
    assert colours(unread, 1) == ["teal", "rust"]
    assert unread.said_of(f"{SQUARES}.rounds")


def test_a_new_layout_begins_with_the_next_colour_and_is_else_as_the_one_before(
    maker: MotifMaker,
) -> None:
    page = maker.sends(maker.open(), do=f"add {LAYOUTS}")
    assert colours(page, 3) == ["teal", "moss", "plum", "rust", "teal"]
    copied = maker.sends(page, do=f"copy {LAYOUTS}.1")
    assert colours(copied, 2) == list(FIVE)
    gone = maker.sends(copied, do=f"remove {LAYOUTS}.1")
    assert "Removed: layout 1" in gone.with_id("order").text


def test_what_is_laid_out_can_be_mixed_evenly_and_laid_out_again(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), do=f"remove {LAYOUTS}.2")
    mixed = maker.sends(page, do="mix")
    typed = mixed.typed()
    pool = [typed[f"{SQUARES}.pool.colours.{n}.value"] for n in range(1, 5)]
    assert pool == ["teal", "rust", "plum", "moss"]
    assert typed[f"{SQUARES}.pool.outer.1.value"] == "oat"
    assert mixed.with_id("mistakes").text == ""
    laid = maker.sends(mixed, do="lay_out")
    assert [colours(laid, n)[0] for n in range(1, 5)] == pool
    assert {colours(laid, n)[-1] for n in range(1, 5)} == {"oat"}
    assert laid.figure("Skeins") == mixed.figure("Skeins")


def test_colours_are_added_to_a_pool_and_removed() -> None:
    maker = MotifMaker(order_of(BODIES["a pool"]))
    pool = f"{SQUARES}.pool.colours"
    page = maker.sends(maker.open(), do=f"add {pool}")
    assert page.typed()[f"{pool}.4.value"] == "moss"
    page = maker.sends(page, do=f"remove {pool}.1")
    assert page.typed()[f"{pool}.1.value"] == "rust"
    assert "Removed: colour to mix" in page.with_id("order").text


def test_colours_of_another_yarn_may_be_chosen_in_a_layout(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), **{f"{LAYOUTS}.1.colours.2.value": "sloe (sloe dk)"})
    assert page.with_id("mistakes").text == ""
    assert "sloe (sloe dk)" in maker.file_of(page)


# -- mistakes --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "beside"),
    [
        ({"motif": ""}, ["motif"]),
        ({"motif": "gone"}, ["motif"]),
        ({"layouts.1.colours.2.value": "puce"}, ["layouts.1.colours.2.value"]),
        ({"layouts.1.colours.2.value": ""}, ["layouts.1.colours.2.value"]),
        ({"layouts.1.count": "4"}, ["layouts.1.count", "layouts.1.share"]),
        ({"layouts.2.share": "-1"}, ["layouts.2.share"]),
        ({"layouts.1.share": "0"}, ["layouts.1.share"]),
        ({"layouts.1.share": "", "layouts.1.count": "5000"}, ["layouts"]),
        ({"motif": "reed square"}, ["layouts.1.colours"]),
        ({"rounds": "0"}, ["rounds"]),
        ({"columns": "201"}, ["columns"]),
        ({"rows": "x"}, ["rows"]),
        ({"join.method": "glue"}, ["join.method"]),
        ({"join.colour": ""}, ["join.colour"]),
        ({"join.colour": "puce"}, ["join.colour"]),
        ({"join.method": "continuous"}, ["join.colour"]),
        ({"join.added": "wide"}, ["join.added"]),
        ({"join.method": "mattress", "join.needleful": "0"}, ["join.needleful"]),
        ({"pool.colours.1.value": "teal"}, ["layouts", "pool.colours"]),
    ],
)
def test_a_mistake_is_told_beside_its_field_and_what_was_typed_stays(
    maker: MotifMaker, typed: dict[str, str], beside: list[str]
) -> None:
    fields = {f"{SQUARES}.{name}": text for name, text in typed.items()}
    page = Page(maker.client.post("/", data=maker.open().typed() | fields).text)
    assert all(page.said_of(f"{SQUARES}.{name}") for name in beside)
    assert {name: page.typed()[name] for name in fields} == fields


def test_a_mistake_of_a_layout_is_named_by_its_round(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), **{f"{LAYOUTS}.2.colours.3.value": "puce"})
    assert "Layout 2, round 3: The yarn has no colour" in " ".join(
        item.text.replace(" :", ":") for item in page.with_id("mistakes").all("li")
    )


def test_a_pool_of_more_last_rounds_than_the_motif_has_is_told_beside_them() -> None:
    body = squares_body(layouts=(), pool=Pool(colours=("teal",), outer=FIVE))
    order = order_of(squares_body())
    order = replace(order, design=replace(order.design, body=body))
    page = MotifMaker(order).open()
    assert page.said_of(f"{SQUARES}.pool.outer")


# -- the counts of the answer ----------------------------------------------------------------------


def test_motifs_edges_and_stitches_are_counted_with_their_sums(wide: MotifMaker) -> None:
    """8 by 11 squares of 15 cm meet at 157 edges on 17 lines; 21 stitches an edge are 3,297."""
    text = text_of(wide.open(), "size")
    assert "8 motifs across, 11 down: 88" in text
    assert "11 × (8 − 1) + 8 × (11 − 1) = 157 edges; (8 − 1) + (11 − 1) = 17 lines" in text
    assert "157 × 15 cm = 2,355 cm" in text
    assert "3,297 sc in the joins." in text
    assert "180 stitches in a motif; 2 border rounds" in text
    assert "Round 5: 60 stitches, 24 chains" in text
    assert "59 of teal, rust, plum, moss, oat: 10 ends each" in text
    assert "29 of oat, moss, plum, rust, teal: 10 ends each" in text


def test_how_far_the_size_is_off_is_told_on_both_sides(wide: MotifMaker) -> None:
    """8 × 15 + 7 × 0.3 cm and two border rounds of 0.633 cm each are 124.63 cm of 130."""
    text = text_of(wide.open(), "size")
    off = text.partition("That is ")[2].partition(" than asked.")[0]
    assert off.startswith("5.4 cm narrower and ")


@pytest.mark.parametrize("other", [method for method in JoinMethod if method not in SEWN])
def test_a_needleful_rests_where_nothing_is_sewn_and_comes_back(other: JoinMethod) -> None:
    sewn = MotifJoin(method=JoinMethod.MATTRESS, colour="oat", needleful_cm=90)
    maker = MotifMaker(order_of(squares_body(layouts=(Layout(colours=FIVE),), join=sewn)))
    shown, name = maker.open(), f"{SQUARES}.join.needleful"
    typed = shown.typed()[name]
    assert "A needleful" in shown.with_id("order").text
    rests = maker.sends(shown, **{f"{SQUARES}.join.method": other.value}, do="join")
    assert maker.status == 200
    assert "A needleful" not in rests.with_id("order").text
    assert rests.typed()[name] == typed
    assert "needleful" not in maker.file_of(rests)
    back = maker.sends(rests, **{f"{SQUARES}.join.method": "mattress"}, do="join")
    assert "A needleful" in back.with_id("order").text
    assert back.typed() == shown.typed() | {"csrf_token": back.typed()["csrf_token"]}


def test_sewn_joins_are_counted_in_needlefuls(wide: MotifMaker) -> None:
    """Whipstitch, 2.5 times the edge: of 8 by 11 squares 7 × 3 + 10 × 2 = 41 needlefuls."""
    page = wide.sends(
        wide.open(), **{f"{SQUARES}.join.method": "whipstitch", f"{SQUARES}.columns": "8"}
    )
    assert "2.5 times as much yarn as there is to sew, in 41 needlefuls." in text_of(page, "size")
    assert "8, your own count" in text_of(page, "size")


def test_one_motif_alone_has_nothing_to_join(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), **{f"{SQUARES}.columns": "1", f"{SQUARES}.rows": "1"})
    text = text_of(page, "size")
    assert "1 motif across, 1 down: 1" in text
    assert "to join" not in text


def test_joining_has_its_line_among_the_hours(maker: MotifMaker) -> None:
    assert "laying out" in text_of(maker.open(), "hours").lower()


# -- layouts as a list -----------------------------------------------------------------------------


def test_layouts_are_typed_as_a_list_and_are_fields_again(maker: MotifMaker) -> None:
    before = maker.open()
    page = maker.sends(before, do=f"as_text {LAYOUTS}")
    assert page.typed()[f"{LAYOUTS}.as_list"].splitlines() == [
        "teal, rust, plum, moss, oat, share 2",
        "oat, moss, plum, rust, teal",
    ]
    assert page.figure("Price") == before.figure("Price")
    again = maker.sends(page, do=f"as_lines {LAYOUTS}").typed()
    assert again == before.typed() | {"csrf_token": again["csrf_token"]}


@pytest.mark.parametrize(
    "line",
    ["teal, rust, oat x 22", "teal;rust;oat × 22", "teal\trust\toat\t22", "  teal, rust,oat,22"],
)
def test_a_line_is_read_as_it_is_typed_or_pasted(maker: MotifMaker, line: str) -> None:
    fields = maker.sends(maker.open(), do=f"as_text {LAYOUTS}").typed()
    fields |= {f"{LAYOUTS}.as_list": f"\n{line}\n", "do": f"as_lines {LAYOUTS}"}
    page = Page(maker.client.post("/", data=fields).text)
    assert colours(page, 1) == ["teal", "rust", "oat"]
    assert page.typed()[f"{LAYOUTS}.1.count"] == "22"


def test_a_mistake_in_the_list_names_its_line_and_round(maker: MotifMaker) -> None:
    fields = maker.sends(maker.open(), do=f"as_text {LAYOUTS}").typed()
    text = "teal, rust, plum, moss, oat\n\nteal, puce, plum, , oat x many"
    page = Page(maker.client.post("/", data=fields | {f"{LAYOUTS}.as_list": text}).text)
    said = page.said_of(LAYOUTS)
    assert "Line 3, round 2: The yarn has no colour “puce”" in said
    assert "Line 3, round 4: This is missing" in said
    assert "Line 3: “many” cannot be read" in said
    assert page.typed()[f"{LAYOUTS}.as_list"] == text
