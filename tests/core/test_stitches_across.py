"""How many stitches go across, in the blanket's own stitch and in stripes of another."""

from __future__ import annotations

from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.design import Corner
from quoting.core.order.in_rows import Section, Stripe
from quoting.core.plan.passes import Plan, Work
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import (
    band,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
)

SC_ROW_CM = 0.95 / 1.5


def planned(workshop: Workshop | None = None, **changes: Any) -> Plan:
    order = sample_order(design=sample_design(**changes))
    return plan_order(order, workshop or sample_workshop())


def with_stripe_in(stitch: str) -> tuple[Section, ...]:
    stripe = Stripe(colour="rust", stitch=stitch)
    return (Section(stripes=(Stripe(colour="teal", rows=3), stripe), share=1),)


def codes(plan: Plan) -> list[str]:
    return [caution.code for caution in plan.cautions]


def test_a_repeat_of_the_order_without_more_stitches_is_met_exactly() -> None:
    """By hand: 98.4 stitches fit, so ten times ten."""
    assert planned(multiple=10).stitches == 100


def test_a_stripe_that_names_the_blankets_own_stitch_has_its_count() -> None:
    """The repeat is the order's own, whatever the pattern's is."""
    moss = Pattern(name="moss", like=Stitch.SC, multiple=6, plus=5)
    design: dict[str, Any] = {"stitch": "moss", "multiple": 10, "plus": 3, "first_rows": ()}
    plan = planned(sample_workshop(patterns=(moss,)), sections=with_stripe_in("moss"), **design)
    assert {row.stitches["moss"] for row in plan.rows} == {103}


def test_a_stripe_in_a_pattern_comes_as_near_as_its_own_repeat_allows() -> None:
    """By hand: 98 x 0.8 cm are 98 moss stitches as wide; 6 k + 5 is nearest at 101, then 95."""
    moss = Pattern(name="moss", like=Stitch.SC, multiple=6, plus=5)
    plan = planned(sample_workshop(patterns=(moss,)), sections=with_stripe_in("moss"))
    assert {row.stitches[row.stitch] for row in plan.rows} == {98, 101}


def test_a_stripe_in_a_plain_stitch_has_any_count_that_its_gauge_asks_for() -> None:
    """By hand: 100 x 0.8 cm over single crochets of 0.9 cm are 88.9."""
    wide = Reading(stitches=10, width_cm=9, rows=10, height_cm=9)
    workshop = sample_workshop(swatches=(sample_swatch(), sample_swatch(stitch="sc", gauge=wide)))
    plan = planned(workshop, sections=with_stripe_in("sc"), border=())
    assert {row.stitch: row.stitches[row.stitch] for row in plan.rows} == {"hdc": 100, "sc": 89}


def test_the_smallest_width_is_half_a_repeat_its_extra_stitches_and_both_borders() -> None:
    """By hand: 6 / 2 + 3 stitches of 0.8 cm and two rounds of single crochet on each side."""
    design = {"multiple": 6, "plus": 3, "border": (band(rounds=2),)}
    with pytest.raises(Refused, match="width-too-small") as refused:
        planned(width_cm=5, **design)
    least = refused.value.mistakes[0].facts["smallest_cm"]
    assert least == pytest.approx(6 * 0.8 + 4 * SC_ROW_CM)
    assert planned(width_cm=least + 1e-6, **design).stitches == 9
    with pytest.raises(Refused, match="width-too-small"):
        planned(width_cm=least - 1e-6, **design)


def test_a_width_of_half_a_repeat_is_made_up_to_one_and_a_smaller_one_is_refused() -> None:
    """By hand: half of ten stitches, and three more, are 6.4 cm."""
    assert planned(width_cm=6.5, multiple=10, plus=3, border=()).stitches == 13
    with pytest.raises(Refused, match="width-too-small"):
        planned(width_cm=6.3, multiple=10, plus=3, border=())


def test_a_stripe_of_a_stitch_next_to_nothing_wide_has_too_many_for_a_row() -> None:
    thread = Reading(stitches=1000, width_cm=1, rows=10, height_cm=9)
    swatches = (sample_swatch(), sample_swatch(stitch="sc", gauge=thread))
    with pytest.raises(Refused, match="too-many-stitches") as refused:
        planned(sample_workshop(swatches=swatches), sections=with_stripe_in("sc"), border=())
    assert refused.value.mistakes[0].facts["read"] == 80_000


def test_a_count_of_less_than_one_repeat_breaks_it() -> None:
    assert "count-breaks-repeat" in codes(planned(stitches=2, multiple=4, plus=2))
    assert "count-breaks-repeat" not in codes(planned(stitches=6, multiple=4, plus=2))


def test_the_chain_begins_the_first_row_whatever_stitch_follows() -> None:
    """Common practice: 4 chains for a treble, its first stitch; 2 for hdc, which are none."""
    treble = (Stripe(colour="oat", stitch="tr"),)
    assert planned(stitches=50, first_rows=treble).foundation_chain == 53
    assert planned(stitches=50, last_rows=treble).foundation_chain == 52


def test_the_chain_is_before_the_first_row_and_adds_nothing_to_the_height() -> None:
    plan = planned(border=())
    chain, *rows = plan.passes
    assert (chain.work, chain.number, chain.height_cm) == (Work.CHAIN, 0, 0)
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))
    assert plan.height_cm == pytest.approx(len(rows) * 0.95)


def test_rounds_are_numbered_from_one_and_only_a_chain_corner_has_chains() -> None:
    plan = planned(border=(band(rounds=2), band(corner=Corner.THREE_IN_ONE, colour="rust")))
    rounds = [worked for worked in plan.passes if worked.work is Work.ROUND]
    assert [one.number for one in rounds] == [1, 2, 3]
    assert ["ch" in one.stitches for one in rounds] == [True, True, False]


def test_only_the_innermost_border_is_asked_how_it_lies_along_the_row_ends() -> None:
    narrow = Reading(stitches=10, width_cm=6, rows=10, height_cm=19)
    workshop = sample_workshop(swatches=(sample_swatch(), sample_swatch(stitch="dc", gauge=narrow)))
    inner, outer = band(), band("dc", row_end_ratio=9.0)
    assert "row-ends-off" not in codes(planned(workshop, border=(inner, outer)))
    own = planned(workshop, border=(band(row_end_ratio=9.0), band("dc")))
    (caution,) = [one for one in own.cautions if one.code == "row-ends-off"]
    assert caution.facts["measured"] == pytest.approx(0.95 / 0.8)
