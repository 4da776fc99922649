"""A piece from the centre on the worktable: typed, told, counted, and the same as its file."""

from __future__ import annotations

import re

import pytest

from quoting.core.order.from_centre import RoundStripe
from quoting.core.quote.quote import quote_order
from quoting.core.workshop.rounds import Counting
from tests.examples import TODAY
from tests.motif_examples import striped_centre
from tests.web.motif_orders import (
    FEN,
    MotifMaker,
    form_sends_its_file,
    motif_workshop,
    order_of,
    text_of,
)
from tests.web.pages import Page

CENTRE = "blanket.centre"
STRIPES = f"{CENTRE}.stripes"

BODIES = {
    "plain": striped_centre(),
    "own rounds": striped_centre(rounds=40, starts_on=12, turned=True, first_side=2),
    "repeats": striped_centre(repeats=9),
    "fitted": striped_centre(fitted=True),
    "by its motif": striped_centre(counting=Counting.CLUSTERS, motif=FEN.name),
    "other chains": striped_centre(counting=Counting.CLUSTERS, side_chains=2),
    "circle": striped_centre(counting=Counting.CIRCLE),
    "hexagon": striped_centre(counting=Counting.HEXAGON),
    "very many": striped_centre(
        stripes=(RoundStripe(colour="teal"), RoundStripe(colour="oat")) * 30
    ),
}


@pytest.fixture
def maker() -> MotifMaker:
    return MotifMaker(order_of(striped_centre()))


@pytest.mark.parametrize("name", BODIES)
def test_what_the_form_sends_is_the_order_of_its_file(name: str) -> None:
    form_sends_its_file(order_of(BODIES[name]))


def test_stripes_are_added_copied_moved_and_removed_from_the_centre_out(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), do=f"add {STRIPES}")
    assert page.typed()[f"{STRIPES}.3.colour"] == "teal"
    assert page.typed()[f"{STRIPES}.3.rounds"] == "1"
    page = maker.sends(page, do=f"up {STRIPES}.3")
    assert [page.typed()[f"{STRIPES}.{n}.rounds"] for n in (1, 2, 3)] == ["2", "1", "1"]
    page = maker.sends(page, do=f"remove {STRIPES}.1")
    assert "Removed: stripe teal" in page.with_id("order").text
    page = maker.sends(page, do="back 1")
    assert page.typed()[f"{STRIPES}.1.rounds"] == "2"


def test_stripes_are_typed_as_a_list_and_are_fields_again(maker: MotifMaker) -> None:
    before = maker.open()
    page = maker.sends(before, do=f"as_text {STRIPES}")
    assert page.typed()[f"{STRIPES}.as_list"].splitlines() == ["teal, 2", "oat, 1"]
    again = maker.sends(page, do=f"as_lines {STRIPES}").typed()
    assert again == before.typed() | {"csrf_token": again["csrf_token"]}


def test_a_mistake_in_the_list_is_told_by_its_line_and_a_stitch_is_none_of_a_round(
    maker: MotifMaker,
) -> None:
    page = maker.sends(maker.open(), do=f"as_text {STRIPES}")
    text = "teal, 2\n\npuce\noat, 3, dc"
    page = maker.sends(page, **{f"{STRIPES}.as_list".replace(".", "__"): text})
    said = page.said_of(STRIPES)
    assert "Line 3: The yarn has no colour “puce”" in said
    assert "Line 4: “3, dc” cannot be read" in said
    assert page.typed()[f"{STRIPES}.as_list"] == text


@pytest.mark.parametrize(
    ("typed", "beside"),
    [
        ({"counting": "oval"}, ["counting"]),
        ({"rounds": "3", "repeats": "2"}, ["repeats", "rounds"]),
        ({"repeats": "2", "fitted": "yes"}, ["repeats", "fitted"]),
        ({"rounds": "0"}, ["rounds"]),
        ({"rounds": "many"}, ["rounds"]),
        ({"starts_on": "-1"}, ["starts_on"]),
        ({"first_side": "7"}, ["first_side"]),
        ({"counting": "clusters", "side_chains": "9"}, ["side_chains"]),
        ({"motif": FEN.name}, ["motif"]),
        ({"motif": "gone"}, ["motif"]),
        ({"stripes.1.colour": "puce"}, ["stripes.1.colour"]),
        ({"stripes.2.rounds": ""}, ["stripes.2.rounds"]),
    ],
)
def test_a_mistake_is_told_beside_its_field_and_what_was_typed_stays(
    maker: MotifMaker, typed: dict[str, str], beside: list[str]
) -> None:
    fields = {f"{CENTRE}.{name}": text for name, text in typed.items()}
    page = Page(maker.client.post("/", data=maker.open().typed() | fields).text)
    assert all(page.said_of(f"{CENTRE}.{name}") for name in beside)
    assert {name: page.typed()[name] for name in fields} == fields


def test_a_side_too_short_for_a_round_is_told_beside_the_size(maker: MotifMaker) -> None:
    page = maker.sends(maker.open(), blanket__width="1", blanket__height="1")
    assert "smallest that works" in page.said_of("blanket.width")


def test_all_stripes_can_be_removed_and_one_is_then_asked_for(maker: MotifMaker) -> None:
    page = maker.open()
    for _ in range(2):
        page = maker.sends(page, do=f"remove {STRIPES}.1")
    assert page.said_of(STRIPES)
    assert "Add a stripe outside" in page.with_id("order").text


# -- the shape decides what is asked --------------------------------------------------------------


@pytest.mark.parametrize("shape", ["circle", "hexagon"])
def test_a_round_piece_says_that_its_width_counts(maker: MotifMaker, shape: str) -> None:
    page = maker.sends(maker.open(), blanket__centre__counting=shape, do="shape")
    assert f"A {shape} goes by its width" in page.with_id("blanket.height.hint").text
    off = text_of(page, "size").partition("That is")[2].partition("than asked")[0]
    assert "longer" not in off
    assert "shorter" not in off


@pytest.mark.parametrize(
    ("shape", "said"),
    [
        ("circle", "{} across comes out, where 80 cm was asked"),
        ("hexagon", "{} from side to side and {} from corner to corner comes out, where 80 cm was"),
    ],
)
def test_a_round_piece_says_how_its_size_is_measured(
    maker: MotifMaker, shape: str, said: str
) -> None:
    """A hexagon is 2/√3 as high, from corner to corner, as it is wide, from side to side."""
    sides = {"blanket__width": "80", "blanket__height": "80"}
    page = maker.sends(maker.open(), blanket__centre__counting=shape, **sides)
    found = re.search(said.replace("{}", r"([\d.]+) cm"), text_of(page, "size"))
    assert found
    width, *height = map(float, found.groups())
    assert height == [pytest.approx(width * 2 / 3**0.5, abs=0.1)] * (shape == "hexagon")
    near = Page(maker.client.post("/near", data=page.typed()).text)
    assert "80 cm was asked" in near.root.text.replace("\u00a0", " ")
    assert ("from corner to corner:" in near.root.text) is (shape == "hexagon")
    assert (" cm across:" in near.root.text) is (shape == "circle")
    sizes = Page(maker.client.post("/sizes/of-order", data=page.typed()).text)
    assert ("the second from corner to corner." in sizes.root.text) is (shape == "hexagon")


@pytest.mark.parametrize("shape", ["circle", "hexagon"])
def test_a_length_left_blank_is_the_width_and_stays_blank(maker: MotifMaker, shape: str) -> None:
    typed = {"blanket__centre__counting": shape, "blanket__width": "100", "blanket__height": ""}
    page = maker.sends(maker.open(), **typed)
    assert "where 100 cm was asked" in text_of(page, "size")
    assert not page.said_of("blanket.height")
    assert page.typed()["blanket.height"] == ""
    square = maker.sends(page, blanket__centre__counting="solid")
    assert "This is missing" in square.said_of("blanket.height")


@pytest.mark.parametrize("shape", ["circle", "hexagon"])
def test_a_round_piece_is_not_asked_what_it_is_longer_by_and_it_comes_back(
    maker: MotifMaker, shape: str
) -> None:
    longer = f"{CENTRE}.starts_on"
    typed = {"blanket__centre__counting": shape, "blanket__centre__starts_on": "12"}
    page = maker.sends(maker.open(), do="shape", **typed)
    assert "Longer by so many" not in page.with_id("order").text
    assert page.typed()[longer] == "12"
    assert "comes out" in text_of(page, "size")
    saved = maker.client.post("/order-file", data=page.typed()).text
    assert "starts_on" not in saved
    square = maker.sends(page, blanket__centre__counting="solid", do="shape")
    assert "Longer by so many" in square.with_id("order").text
    assert square.typed()[longer] == "12"
    assert "Longer by 12 stitches than a square, your own count" in text_of(square, "size")


@pytest.mark.parametrize(
    ("field", "typed", "label", "own", "other"),
    [
        ("first_side", "2", "Stitches a side in round 1", "solid", "clusters"),
        ("first_side", "3", "Stitches a side in round 1", "solid", "circle"),
        ("side_chains", "2", "Chains between clusters", "clusters", "solid"),
        ("side_chains", "0", "Chains between clusters", "clusters", "hexagon"),
    ],
)
def test_what_counts_for_one_shape_rests_with_another_and_comes_back(
    maker: MotifMaker, field: str, typed: str, label: str, own: str, other: str
) -> None:
    name = f"{CENTRE}.{field}"
    shown = maker.sends(
        maker.open(), **{"blanket__centre__counting": own, name.replace(".", "__"): typed}
    )
    assert label in shown.with_id("order").text
    rests = maker.sends(shown, blanket__centre__counting=other, do="shape")
    assert label not in rests.with_id("order").text
    assert rests.typed()[name] == typed
    assert field not in maker.client.post("/order-file", data=rests.typed()).text
    back = maker.sends(rests, blanket__centre__counting=own, do="shape")
    assert back.typed()[name] == typed
    assert field in maker.client.post("/order-file", data=back.typed()).text


def test_motifs_of_its_shape_are_offered_to_reckon_by(maker: MotifMaker) -> None:
    offered = {}
    for shape in Counting:
        page = maker.sends(maker.open(), blanket__centre__counting=shape.value)
        options = page.with_id(f"{CENTRE}.motif").all("option")
        offered[shape] = [option.text for option in options][1:]
    assert offered == {
        Counting.CLUSTERS: ["fen square: 5 rounds, 15 cm, 12 g"],
        Counting.SOLID: ["reed square: 3 rounds, 9 cm, 12 g"],
        Counting.CIRCLE: [],
        Counting.HEXAGON: [],
    }


# -- the counts of the answer ----------------------------------------------------------------------


def test_rounds_are_counted_with_their_sum_and_how_they_grow() -> None:
    """In dc at 9 rows to 10 cm each round adds 2.222 cm; a solid square grows by 16 stitches."""
    order = order_of(striped_centre(starts_on=0))
    page = MotifMaker(order, motif_workshop(motifs=())).open()
    plan = quote_order(order, motif_workshop(motifs=()), today=TODAY).plan
    text = text_of(page, "size")
    assert f"{len(plan.rows)} rounds, {plan.stitches} stitches in the last; 2 border rounds" in text
    assert "rounds after the first" in text
    assert "Size and yarn go by the swatch of dc." in text
    total = sum(worked.stitches["dc"] for worked in plan.rows)
    assert f"= {total:,} in all: 12 stitches in round 1, 16 more in each" in text


def test_a_rectangle_says_by_how_much_it_is_longer_than_a_square(maker: MotifMaker) -> None:
    text = text_of(maker.open(), "size")
    longer = text.partition("Longer by ")[2].partition(".")[0]
    assert longer.split()[1:5] == ["stitches", "than", "a", "square:"]
    own = maker.sends(maker.open(), blanket__centre__starts_on="1")
    assert "Longer by 1 stitch than a square, your own count" in text_of(own, "size")


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"rounds": "40"}, "40, your own count"),
        ({"repeats": "9"}, "9 × 3 rounds = 27, your own count of repeats"),
        ({"counting": "clusters"}, "Size and yarn go by the motif fen square."),
    ],
)
def test_own_counts_and_the_motif_are_named(
    maker: MotifMaker, typed: dict[str, str], said: str
) -> None:
    fields = {f"{CENTRE}.{name}": text for name, text in typed.items()}
    page = Page(maker.client.post("/", data=maker.open().typed() | fields).text)
    assert said in text_of(page, "size")
