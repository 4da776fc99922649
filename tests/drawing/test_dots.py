"""The picture of what came of figures: where they fell against what was expected."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from collections.abc import Sequence
from decimal import Decimal

import pytest

from exports.charts import Dot, dots
from tests.drawing.pictures import of_class, words_of

WITHIN = Dot(
    name="2026-001",
    label="4% more, within",
    expected=Decimal(0),
    real=Decimal("0.04"),
    low=Decimal("-0.1"),
    high=Decimal("0.1"),
)
OUTSIDE = Dot(
    name="2026-002 <&>",
    label="30% more, outside",
    expected=Decimal(0),
    real=Decimal("0.3"),
    low=Decimal("-0.1"),
    high=Decimal("0.1"),
)
PLAIN = Dot(name="2026-003", label="£14", expected=Decimal(16), real=Decimal(14))


def picture(shown: Sequence[Dot]) -> ET.Element:
    drawn = dots(
        shown,
        title="Real hours",
        description="Dots.",
        zero="as quoted",
        say=lambda amount: f"{amount:+}",
        prefix="hours",
    )
    return ET.fromstring(drawn)


def x_of(dot: ET.Element) -> float:
    return float(dot.get("cx") or 0)


def test_a_figure_that_fell_outside_its_range_is_hollow_and_lies_right_of_it() -> None:
    drawn = picture([WITHIN, OUTSIDE])
    within, outside = of_class(drawn, "real")
    assert (within.get("fill"), outside.get("fill")) == ("currentColor", "none")
    ends = [(of_class(drawn, "range")[1].get("d") or "").split()[at] for at in (1, 4)]
    low, high = map(float, ends)
    assert low < x_of(within) < high < x_of(outside)


def test_the_scale_says_its_ends_and_what_nought_is() -> None:
    words = words_of(picture([WITHIN, OUTSIDE]))
    assert all(said in words for said in ("as quoted", "-0.1", "+0.3"))


def test_amounts_begin_at_nothing_and_no_range_is_drawn_where_there_is_none() -> None:
    drawn = picture([PLAIN])
    assert of_class(drawn, "range") == []
    assert of_class(drawn, "real")[0].get("fill") == "currentColor"
    assert "+16" in words_of(drawn)


@pytest.mark.parametrize("amount", ["0", "5"])
def test_figures_that_are_all_the_same_are_drawn_all_the_same(amount: str) -> None:
    same = Dot(name="x", label="same", expected=Decimal(amount), real=Decimal(amount))
    assert len(of_class(picture([same, same]), "real")) == 2


def test_every_dot_says_what_it_is() -> None:
    titles = picture([WITHIN, OUTSIDE]).iter("{http://www.w3.org/2000/svg}title")
    said = [title.text for title in titles]
    assert "2026-002 <&>: 30% more, outside" in said
