"""Swatches of two yarns: neither says anything of the other, where it has its own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.order.design import ColourSource
from quoting.core.plan.gauge import Made, Sureness, gauge_of, has_swatch
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import (
    WOOL,
    band,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
)

FINE = "fell dk"
NARROW = Reading(stitches=20, width_cm=12, rows=20, height_cm=14)


def workshop(**changes: object) -> Workshop:
    """Return a workshop of a thick and a fine yarn, the thick one swatched first."""
    fine = replace(sample_yarn(), name=FINE, stock=())
    return sample_workshop(yarns=(sample_yarn(), fine), **changes)


def test_each_yarn_has_the_gauge_of_its_own_swatch() -> None:
    both = workshop(swatches=(sample_swatch(), sample_swatch(yarn=FINE, gauge=NARROW)))
    thick, fine = (gauge_of(both, yarn, "hdc") for yarn in (WOOL, FINE))
    assert (thick.width_cm, thick.height_cm) == pytest.approx((0.8, 0.95))
    assert (fine.width_cm, fine.height_cm) == pytest.approx((0.6, 0.7))
    assert (thick.basis, fine.basis) == (f"{WOOL}/hdc", f"{FINE}/hdc")


def test_a_yarn_is_not_measured_by_the_swatch_of_another() -> None:
    gauge = gauge_of(workshop(), FINE, "hdc")
    assert gauge.sureness is Sureness.ROUGH
    assert gauge.basis == f"{FINE}/category"


def test_a_yarn_has_a_swatch_where_one_of_all_the_swatches_is_of_it() -> None:
    both = workshop(swatches=(sample_swatch(), sample_swatch(yarn=FINE)))
    assert [has_swatch(both, yarn) for yarn in (WOOL, FINE, "unheard-of")] == [True, True, False]
    assert not has_swatch(workshop(), FINE)


def test_of_two_swatches_as_tall_the_basic_stitchs_is_taken_before_a_patterns() -> None:
    moss, heather = (Pattern(name=name, like=Stitch.HDC) for name in ("moss", "heather"))
    swatches = (sample_swatch(stitch="moss", gauge=NARROW), sample_swatch())
    found = gauge_of(workshop(swatches=swatches, patterns=(moss, heather)), WOOL, "heather")
    assert found.basis == f"{WOOL}/hdc"


def test_which_of_two_patterns_a_stitch_rests_on_does_not_follow_the_order_of_the_file() -> None:
    patterns = tuple(Pattern(name=name, like=Stitch.HDC) for name in ("moss", "heather"))
    swatches = tuple(sample_swatch(stitch=one.name) for one in patterns)
    for order in (swatches, swatches[::-1]):
        found = gauge_of(workshop(swatches=order, patterns=patterns), WOOL, "hdc")
        assert found.basis == f"{WOOL}/heather"


def in_both(*, swatched: bool = True, **changes: object) -> Plan:
    """Return a plan in which rust comes from the fine yarn, and teal from the thick one."""
    swatches = (sample_swatch(), *([sample_swatch(yarn=FINE, gauge=NARROW)] if swatched else []))
    design = sample_design(
        **{
            "colours": {"rust": ColourSource(yarn=FINE, colour="rust")},
            "first_rows": (),
            "sections": (section("teal", "rust", rows=2, repeats=10),),
            "border": (),
            **changes,
        }
    )
    return plan_order(sample_order(design=design), workshop(swatches=swatches))


def test_rows_of_a_second_yarn_are_as_high_as_its_own_swatch_says() -> None:
    """By hand: 20 rows of 0.95 cm and 20 of 0.7; in one yarn they would be 38 cm."""
    plan = in_both()
    assert plan.height_cm == pytest.approx(20 * 0.95 + 20 * 0.7)
    assert {row.colour: row.height_cm for row in plan.rows} == pytest.approx(
        {"teal": 0.95, "rust": 0.7}
    )


def test_rows_of_a_second_yarn_have_the_count_that_is_as_wide() -> None:
    """By hand: 100 stitches of 0.8 cm are as wide as 133.3 of 0.6."""
    plan = in_both()
    assert {row.colour: row.stitches["hdc"] for row in plan.rows} == {"teal": 100, "rust": 133}
    assert plan.width_cm == pytest.approx(80)
    own = in_both(stitches=50)
    assert {row.stitches["hdc"] for row in own.rows} == {50}


def test_sections_share_the_height_by_the_rows_of_each_yarn() -> None:
    """By hand: of 95 cm half is 50 rows of 0.95, and half 67.9 of 0.7, of which 68 are nearest."""
    plan = in_both(height_cm=95, sections=(section("teal", share=1), section("rust", share=1)))
    assert plan.rows_by_colour == {"teal": 50, "rust": 68}


def test_a_border_in_a_second_yarn_is_as_deep_as_that_works_up() -> None:
    """By hand: sc of the fine yarn is 0.7 / 1.5 cm high and 0.6 wide, so it goes by length."""
    plan = in_both(
        sections=(section("teal", repeats=10),), stitches=30, border=(band(colour="rust"),)
    )
    assert plan.border_depth_cm == pytest.approx(0.7 / 1.5)
    (first,) = plan.rounds
    assert first.height_cm == pytest.approx(0.7 / 1.5)
    assert first.stitches["sc"] == 2 * 40 + 2 * 16  # 24 cm and 9.5 cm


def test_a_second_yarn_without_a_swatch_works_up_as_the_blankets_own() -> None:
    plan = in_both(swatched=False)
    assert plan.height_cm == pytest.approx(40 * 0.95)
    assert {row.stitches["hdc"] for row in plan.rows} == {100}
    assert [caution.code for caution in plan.cautions] == []


def test_two_gauges_more_than_a_twentieth_apart_across_are_told() -> None:
    (caution,) = (one for one in in_both().cautions if one.code == "gauges-apart")
    assert (caution.facts["wide_yarn"], caution.facts["narrow_yarn"]) == (WOOL, FINE)
    assert caution.facts["apart"] == pytest.approx(0.8 / 0.6 - 1)


def test_of_two_yarns_without_a_swatch_the_blankets_own_gives_the_size() -> None:
    """Craft Yarn Council, category 4: 11 to 14 single crochet in 4 in; hdc half as high again."""
    design = sample_design(colours={"rust": ColourSource(yarn=FINE, colour="rust")}, border=())
    fine = replace(sample_yarn(), name=FINE, category=1, stock=())
    unswatched = sample_workshop(yarns=(sample_yarn(), fine), swatches=())
    plan = plan_order(sample_order(design=design), unswatched)
    (height_cm,) = {row.height_cm for row in plan.rows}
    assert height_cm == pytest.approx(10.16 / 12.5 * 1.5)
    assert plan.gauges[Made(FINE, "hdc")].yarn_m < plan.gauges[Made(WOOL, "hdc")].yarn_m
