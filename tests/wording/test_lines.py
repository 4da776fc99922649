"""The lines of a costing, and rows and rounds, are named for a maker."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pytest

from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.wording import line_quantity, line_rate, line_unit, line_what, pass_words
from tests.wording.speeches import GB


def line(kind: LineKind, unit: Unit, quantity: str, rate: str, **more: Any) -> Line:
    count, each = Decimal(quantity), Decimal(rate)
    return Line(kind=kind, unit=unit, quantity=count, rate=each, amount=count * each, **more)


def test_a_line_says_what_it_is_for() -> None:
    skeins = line(LineKind.YARN, Unit.SKEIN, "3", "4.60", subject="oat", ball_g=100.0)
    packs = line(LineKind.YARN, Unit.PACK, "1", "20", subject="oat", ball_g=50.0, pack=10)
    fee = line(LineKind.FEE, Unit.MONEY, "297.00", "0.015", subject="Card payment")
    making = line(LineKind.MAKING, Unit.HOUR, "11.7", "14")
    assert line_what(skeins, GB) == "Yarn, oat: 100\u00a0g skeins"
    assert line_what(packs, GB) == "Yarn, oat: packs of 10 × 50\u00a0g"
    assert line_what(fee, GB) == "Card payment, on £297.00"
    assert line_what(making, GB) == "Making"
    assert (line_quantity(making, GB), line_unit(making, GB)) == ("11.70", "h")
    assert (line_rate(fee, GB), line_rate(making, GB)) == ("1.5%", "£14.00")


@pytest.mark.parametrize("kind", list(LineKind))
@pytest.mark.parametrize("unit", list(Unit))
def test_every_line_has_a_name_a_quantity_and_a_unit(kind: LineKind, unit: Unit) -> None:
    any_line = line(kind, unit, "2", "0.5", subject="oat", ball_g=100.0)
    words = (line_what, line_quantity, line_unit, line_rate)
    assert [word for word in words if not word(any_line, GB)] == []


def test_rows_and_rounds_are_called_so() -> None:
    worked = Pass(
        work=Work.ROW,
        number=12,
        colour="oat",
        stitch="hdc",
        stitches={"hdc": 98},
        starts=Edge.START,
        ends=Edge.FAR,
        height_cm=0.95,
    )
    assert pass_words(worked) == "row 12"
