"""The Sizes page of a circle and a hexagon, which go by their width alone."""

from __future__ import annotations

import pytest

from quoting.core.ground.measures import Units
from quoting.core.workshop.rounds import Counting
from tests.motif_examples import sample_centre
from tests.web.asked_sizes import sizes_of
from tests.web.motif_orders import MotifMaker, motif_workshop, order_of
from tests.web.pages import Page

ROUND = [shape for shape in Counting if shape.goes_by_width]


def sizes_page(
    shape: Counting, width_cm: float = 60, height_cm: float = 60, **typed: str
) -> tuple[MotifMaker, Page]:
    """Bring an order of a shape to the Sizes page, and type there."""
    body = sample_centre("teal", "rust", counting=shape)
    maker = MotifMaker(order_of(body, width_cm=width_cm, height_cm=height_cm))
    page = maker.sends(maker.open(), "/sizes/of-order")
    return maker, maker.sends(page, "/sizes", **typed)


@pytest.mark.parametrize("shape", ROUND)
@pytest.mark.parametrize(
    ("typed", "name", "understood"),
    [
        ("90", "90 cm", "Read as 90 cm"),
        ("90 cm", "90 cm", ""),
        ("0.9 m", "90 cm", "Read as 90 cm"),
        ("90 x 90", "90 cm", "Read as 90 cm"),
        ("36 in", "91.4 cm", "Read as 91.4 cm"),
        ("90 x 120 cm", "90 × 120 cm", ""),
    ],
)
def test_one_measure_is_enough(shape: Counting, typed: str, name: str, understood: str) -> None:
    _, page = sizes_page(shape, own__1__size=typed)
    assert name in sizes_of(page)
    assert page.said_of("own.1.size") == understood


@pytest.mark.parametrize("shape", ROUND)
def test_one_measure_costs_what_the_same_twice_does(shape: Counting) -> None:
    rows = []
    for typed in ("90", "90 x 90 cm"):
        _, page = sizes_page(shape, own__1__size=typed)
        rows.append([row for row in page.table("Size asked")[1:] if row[0].startswith("90 cm")])
    assert rows[0] == rows[1] != []


@pytest.mark.parametrize("shape", ROUND)
def test_the_orders_own_size_is_called_by_its_one_measure_and_is_not_asked_twice(
    shape: Counting,
) -> None:
    _, page = sizes_page(shape)
    assert page.table("Size asked")[1][0].startswith("60 cm as ordered")
    _, page = sizes_page(shape, own__1__size="90", own__2__size="90x90")
    assert "is among the sizes already" in page.said_of("own.2.size")


@pytest.mark.parametrize("shape", ROUND)
def test_that_the_width_alone_counts_is_said_once_above_the_sizes(shape: Counting) -> None:
    _, page = sizes_page(shape, width_cm=30, height_cm=80)
    said = page.with_id("answer").text
    note = f"A {shape.value} goes by its width"
    assert said.count(note) == 1
    assert "of each size the width alone counts, not the length." in said
    assert said.index(note) < said.index("Size asked")
    assert page.table("Size asked")[1][0].startswith("30 cm as ordered")
    assert "80 cm" not in next(page.with_id("order").all("ul")).text


def test_of_what_has_a_length_nothing_is_said() -> None:
    _, page = sizes_page(Counting.SOLID)
    assert "goes by its width" not in page.root.text
    assert page.table("Size asked")[1][0].startswith("60 × 60 cm as ordered")


@pytest.mark.parametrize("shape", ROUND)
def test_a_size_typed_so_is_taken_to_the_order_and_its_price_stays_with_it(
    shape: Counting,
) -> None:
    asked = {"asks": "prices", "ordered__price": "150", "own__1__price": "250"}
    maker, page = sizes_page(shape, own__1__size="90", **asked)
    table = maker.client.post("/sizes/take", data=page.typed() | {"take": "90.0x90.0cm"})
    taken = Page(table.text).typed()
    assert (taken["blanket.width"], taken["blanket.height"]) == ("90 cm", "90 cm")
    kept = {name: text for name, text in page.typed().items() if name != "order_file"}
    back = Page(maker.client.post("/sizes/of-order", data=taken | kept).text)
    prices = [row[2] for row in back.table("Size asked")[1:]]
    assert dict(zip(sizes_of(back), prices, strict=True)) == {"90 cm": "250.00", "60 cm": "150.00"}


@pytest.mark.parametrize("shape", ROUND)
@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("wide", "cannot be read"),
        ("0", "must be more than 0 cm"),
        ("90 x", "cannot be read as a size"),
        ("9999", "the most that will do is 1,000 cm"),
        ("90 kg", "unit"),
    ],
)
def test_what_is_no_width_is_told_beside_its_field(
    shape: Counting, typed: str, sentence: str
) -> None:
    _, page = sizes_page(shape, own__1__size=typed)
    assert sentence in page.said_of("own.1.size")
    assert page.typed()["own.1.size"] == typed


@pytest.mark.parametrize("shape", [shape for shape in Counting if shape not in ROUND])
def test_what_has_a_length_is_asked_for_it(shape: Counting) -> None:
    _, page = sizes_page(shape, own__1__size="90")
    assert "cannot be read as a size" in page.said_of("own.1.size")
    assert "Width by length" in page.with_id("own.hint").text


def test_the_hint_is_of_a_width_in_the_makers_unit() -> None:
    body = sample_centre("teal", counting=Counting.CIRCLE)
    workshop = motif_workshop(units=Units.INCHES)
    maker = MotifMaker(order_of(body, width_cm=60, height_cm=60), workshop)
    page = maker.sends(maker.open(), "/sizes/of-order", own__1__size="36")
    assert page.with_id("own.hint").text == "Its width, one to a line: 90 in, 36 in, 0.9 m"
