"""A circle and a hexagon are asked for by their width: what they do not need is not asked."""

from __future__ import annotations

import pytest

from quoting.core.order.order import Order
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_order_text, order_text
from quoting.wording import mistake_sentence, speech_of
from tests.files.conftest import found
from tests.motif_examples import centre_order, motif_workshop, sample_centre

WORKSHOP = motif_workshop()
ROUND = [shape for shape in Counting if shape.goes_by_width]
SQUARE = [shape for shape in Counting if not shape.goes_by_width]


def file_of(shape: Counting, *without: str) -> str:
    """Return the file of an order of a shape, without the lines that begin with some keys."""
    order = centre_order(body=sample_centre("teal", "rust", counting=shape))
    lines = order_text(order, Vocabulary.US).splitlines()
    return "\n".join(line for line in lines if not line.startswith(without))


def read(text: str) -> Order:
    return load_order_text(text, WORKSHOP)


@pytest.mark.parametrize("shape", ROUND)
def test_a_file_without_a_length_asks_as_long_as_wide_and_is_the_same_when_saved(
    shape: Counting,
) -> None:
    text = file_of(shape, "height")
    assert "height" not in text
    order = read(text)
    assert order.design.height_cm == order.design.width_cm == 75
    assert read(order_text(order, Vocabulary.US)) == order


@pytest.mark.parametrize("shape", ROUND)
def test_a_length_that_is_given_is_kept_as_what_was_asked(shape: Counting) -> None:
    assert read(file_of(shape)).design.height_cm == 90


@pytest.mark.parametrize("shape", ROUND)
def test_without_a_width_the_width_alone_is_missing(shape: Counting) -> None:
    mistakes = found(lambda: read(file_of(shape, "width", "height")))
    assert {place: m.code for place, m in mistakes.items()} == {"blanket.width": "missing"}


@pytest.mark.parametrize("shape", SQUARE)
def test_what_has_a_width_and_a_length_needs_both(shape: Counting) -> None:
    mistakes = found(lambda: read(file_of(shape, "height")))
    assert {place: m.code for place, m in mistakes.items()} == {"blanket.height": "missing"}


@pytest.mark.parametrize("other", ['"sphere"', "6", "[]", "{ circle = true }"])
def test_what_is_no_shape_at_all_is_told_and_leaves_the_length_needed(other: str) -> None:
    text = file_of(Counting.CIRCLE, "height").replace('"circle"', other)
    mistakes = found(lambda: read(text))
    assert set(mistakes) == {"blanket.centre.counting", "blanket.height"}


def longer_by(shape: Counting, count: int) -> str:
    return file_of(shape).replace("counting =", f"starts_on = {count}\ncounting =")


@pytest.mark.parametrize("count", [0, 12])
@pytest.mark.parametrize("shape", ROUND)
def test_what_has_no_long_side_is_not_longer_by_a_count(shape: Counting, count: int) -> None:
    """It would count for nothing."""
    mistakes = found(lambda: read(longer_by(shape, count)))
    assert list(mistakes) == ["blanket.centre.starts_on"]
    (mistake,) = mistakes.values()
    assert mistake.code == "no-long-side"
    assert "leave this out" in mistake_sentence(mistake, speech_of(WORKSHOP))


@pytest.mark.parametrize("shape", SQUARE)
def test_what_can_be_a_rectangle_is_longer_by_a_count(shape: Counting) -> None:
    assert read(longer_by(shape, 12)).design.body == sample_centre(
        "teal", "rust", counting=shape, starts_on=12
    )
