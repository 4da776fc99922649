"""How rows are left at the height asked for, and what is too low: by hand, in rows of 1 cm."""

from __future__ import annotations

from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.in_rows import StopAt
from quoting.core.plan.rows.stripes import Striping, stripe_body
from tests.examples import rows_of, sample_design, section, stripes


def striped(height_cm: float, *sections: Any, **changes: Any) -> Striping:
    """Return the rows of a body, each 1 cm high."""
    design = sample_design(**{"first_rows": (), "sections": sections, **changes})
    return stripe_body(rows_of(design), design, height_cm, lambda _: 1.0)


@pytest.mark.parametrize("period", [2, 3, 5])
@pytest.mark.parametrize("height_cm", [5, 5.4, 5.5, 5.6, 6, 11.49, 12.5, 17])
def test_a_last_section_that_may_stop_at_any_row_comes_to_the_nearest_row(
    height_cm: float, period: int
) -> None:
    """Of two rows as near, the taller."""
    found = striped(height_cm, section("teal", rows=period), stop_at=StopAt.ROW)
    nearest = int(height_cm + 0.5)
    assert len(found.rows) == nearest
    assert found.repeats == (pytest.approx(nearest / period),)


def test_a_last_section_stops_where_the_ones_before_it_leave_it_room() -> None:
    """By hand: of 40.4 cm half are 4 repeats of 5 and 3 of 6; then 20.4 cm are left: 20 rows."""
    found = striped(
        40.4,
        section("teal", rows=5, share=1),
        section("rust", rows=6, share=1),
        stop_at=StopAt.ROW,
    )
    assert [row.colour for row in found.rows] == ["teal"] * 20 + ["rust"] * 20


def test_a_section_of_its_own_repeats_leaves_the_rest_of_the_height_to_the_others() -> None:
    """By hand: 40 cm less 2 rows at each end and 3 repeats of 2 leave 30 cm: 10 repeats of 3."""
    found = striped(
        40,
        section("teal", rows=2, repeats=3),
        section("rust", rows=3, share=1),
        first_rows=stripes("oat", rows=2),
        last_rows=stripes("oat", rows=2),
    )
    assert found.repeats == (3, 10)
    assert len(found.rows) == 40


def test_a_height_a_millimetre_too_low_is_refused_with_all_that_must_fit() -> None:
    """By hand: one row before, 3 repeats of 2, and one repeat of 3 of the section with a share."""
    parts = (section("teal", rows=2, repeats=3), section("rust", rows=3, share=1))
    first = stripes("oat")
    assert len(striped(10, *parts, first_rows=first).rows) == 10
    with pytest.raises(Refused, match="height-too-small") as refused:
        striped(9.9, *parts, first_rows=first)
    assert refused.value.mistakes[0].facts["smallest_body_cm"] == 10
