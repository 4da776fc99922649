"""From an order to passes: counts, rows, sizes, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.order.in_rows import Section, StopAt, Stripe
from quoting.core.plan.gauge import Made
from quoting.core.plan.passes import Edge, Plan, Work
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Piece, Reading
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import (
    WOOL,
    band,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
    section,
    stripes,
)

HDC_CM, SC_CM = 0.95, 0.95 / 1.5


def planned(workshop: Workshop | None = None, **changes: Any) -> Plan:
    order = sample_order(design=sample_design(**changes))
    return plan_order(order, workshop or sample_workshop())


def codes(plan: Plan) -> list[str]:
    return [caution.code for caution in plan.cautions]


def swatched(stitch: str, width_cm: float, height_cm: float) -> Workshop:
    gauge = Reading(stitches=10, width_cm=10 * width_cm, rows=10, height_cm=10 * height_cm)
    return sample_workshop(swatches=(sample_swatch(), sample_swatch(stitch=stitch, gauge=gauge)))


def test_the_cot_blanket_comes_to_its_known_figures() -> None:
    """By hand: (80 - 1.2667) / 0.8 = 98.4; (100 - 1.2667) / 0.95 = 103.9; a side 103 x 1.1875."""
    plan = planned()
    assert (plan.stitches, plan.foundation_chain) == (98, 100)
    assert (len(plan.rows), plan.section_repeats) == (103, (34.0,))
    assert [dict(one.stitches) for one in plan.rounds] == [{"sc": 2 * 98 + 2 * 122, "ch": 8}]
    assert plan.border_depth_cm == pytest.approx(SC_CM)
    assert plan.width_cm == pytest.approx(98 * 0.8 + 2 * SC_CM)
    assert plan.height_cm == pytest.approx(103 * HDC_CM + 2 * SC_CM)
    assert plan.rows_by_colour == {"oat": 35, "teal": 34, "rust": 34}
    assert plan.rows_by_section == (102,)


def test_rows_go_back_and_forth_and_rounds_stay_where_the_last_row_ended() -> None:
    plan = planned(border=(band(rounds=2),))
    chain, first, second = plan.passes[:3]
    assert (chain.work, chain.starts, chain.ends) == (Work.CHAIN, Edge.FAR, Edge.START)
    assert (first.starts, first.ends) == (Edge.START, Edge.FAR)
    assert (second.starts, second.ends) == (Edge.FAR, Edge.START)
    assert {(one.starts, one.ends) for one in plan.rounds} == {(Edge.FAR, Edge.FAR)}


def test_turning_chains_are_worked_from_row_two_on() -> None:
    plan = planned()
    assert dict(plan.passes[0].stitches) == {"ch": 100}
    assert dict(plan.rows[0].stitches) == {"hdc": 98}
    assert dict(plan.rows[1].stitches) == {"hdc": 98, "ch": 2}


def test_a_turning_chain_that_counts_is_one_of_the_stitches() -> None:
    habits = Habits(counts_turning_chain={Stitch.HDC: True})
    plan = planned(sample_workshop(habits=habits))
    assert plan.foundation_chain == 99
    assert dict(plan.passes[0].stitches) == {"ch": 97}
    assert dict(plan.rows[1].stitches) == {"hdc": 98}


def test_no_chains_to_turn_with_stand_for_no_stitch() -> None:
    """By hand: with nothing to skip, 98 stitches are worked into 98 chains."""
    flat = Pattern(name="flat", like=Stitch.DC, turning_chains=0)
    plan = planned(sample_workshop(patterns=(flat,)), stitch="flat", stitches=98)
    assert plan.foundation_chain == 98
    assert dict(plan.rows[1].stitches) == {"flat": 98}


def test_the_makers_own_stitches_win_over_the_width() -> None:
    plan = planned(stitches=50)
    assert plan.stitches == 50
    assert plan.width_cm == pytest.approx(40 + 2 * SC_CM)


def test_a_count_that_breaks_the_repeat_is_told() -> None:
    assert "count-breaks-repeat" in codes(planned(stitches=51, multiple=4, plus=2))
    assert "count-breaks-repeat" not in codes(planned(stitches=50, multiple=4, plus=2))


def test_a_pattern_brings_its_repeat_and_its_turning_chains() -> None:
    moss = Pattern(name="moss", like=Stitch.SC, multiple=10, plus=3, turning_chains=2)
    plan = planned(sample_workshop(patterns=(moss,)), stitch="moss")
    assert plan.stitches == 103  # by the swatch's width: 98.4, between 93 and 103
    assert plan.foundation_chain == 105
    assert plan.rows[0].height_cm == pytest.approx(SC_CM)


def test_a_border_round_wide_blocks_is_counted_by_length() -> None:
    """By hand: 60 blocks of 1.5 cm by 60 rows of 1.5 cm are 90 cm, or 158.7 sc of 0.567 cm."""
    block = Pattern(name="block", like=Stitch.DC)
    readings = {
        "block": Reading(stitches=10, width_cm=15, rows=10, height_cm=15),
        "sc": Reading(stitches=30, width_cm=17, rows=30, height_cm=17),
    }
    swatches = tuple(sample_swatch(stitch=name, gauge=one) for name, one in readings.items())
    plan = planned(
        sample_workshop(patterns=(block,), swatches=swatches),
        stitch="block",
        stitches=60,
        first_rows=(),
        sections=(section("oat", repeats=60),),
    )
    assert plan.rounds[0].stitches["sc"] == 4 * 159


def test_the_orders_repeat_wins_over_the_patterns() -> None:
    moss = Pattern(name="moss", like=Stitch.SC, multiple=10, plus=3)
    assert (
        planned(sample_workshop(patterns=(moss,)), stitch="moss", multiple=1, plus=0).stitches == 98
    )


def test_rows_of_another_stitch_follow_its_own_gauge() -> None:
    two = (Stripe(colour="teal", rows=2), Stripe(colour="rust", stitch="dc"))
    plan = planned(
        swatched("dc", 0.7, 1.4), first_rows=(), sections=(Section(stripes=two, repeats=10),)
    )
    assert {row.stitch: row.height_cm for row in plan.rows} == {
        "hdc": pytest.approx(0.95),
        "dc": pytest.approx(1.4),
    }
    counts = {row.stitch: row.stitches[row.stitch] for row in plan.rows}
    assert counts == {"hdc": 98, "dc": 112}  # 98 x 0.8 / 0.7
    assert plan.height_cm == pytest.approx(20 * 0.95 + 10 * 1.4 + 2 * SC_CM)


def test_sections_of_different_heights_share_by_height_not_by_rows() -> None:
    tall = Section(stripes=(Stripe(colour="rust", stitch="dc"),), share=1)
    plan = planned(
        swatched("dc", 0.8, 1.9),
        first_rows=(),
        border=(),
        height_cm=95,
        sections=(section("teal", share=1), tall),
    )
    assert plan.section_repeats == (50.0, 25.0)


@pytest.mark.parametrize(
    ("stop_at", "rows"),
    [(StopAt.REPEAT, 20), (StopAt.STRIPE, 27), (StopAt.ROW, 26)],
)
def test_the_last_section_stops_as_finely_as_it_is_asked(stop_at: StopAt, rows: int) -> None:
    """By hand: 25.6 rows fit; repeats of 20, or stripes that end at 20, 27 and 40, or any row."""
    plan = planned(
        first_rows=(),
        border=(),
        height_cm=25.6 * HDC_CM,
        sections=(Section(stripes=(Stripe(colour="oat", rows=7), Stripe(colour="rust", rows=13))),),
        stop_at=stop_at,
    )
    assert len(plan.rows) == rows


def test_repeats_that_miss_the_height_offer_the_finer_stops() -> None:
    long = (Section(stripes=(Stripe(colour="oat", rows=7), Stripe(colour="rust", rows=13))),)
    plan = planned(first_rows=(), border=(), height_cm=25.6 * HDC_CM, sections=long)
    (caution,) = [one for one in plan.cautions if one.code == "repeats-miss-height"]
    assert caution.facts["stripe_cm"] == pytest.approx(27 * HDC_CM)
    assert caution.facts["row_cm"] == pytest.approx(26 * HDC_CM)
    assert "repeats-miss-height" not in codes(planned())


def test_a_whole_stripe_is_offered_only_where_it_stops_elsewhere_than_repeats_and_rows() -> None:
    one = (Section(stripes=(Stripe(colour="oat", rows=20),)),)
    same_as_row = (Section(stripes=(Stripe(colour="oat", rows=7), Stripe(colour="rust", rows=13))),)
    for rows, sections in ((25.6, one), (27.0, same_as_row)):
        plan = planned(first_rows=(), border=(), height_cm=rows * HDC_CM, sections=sections)
        (caution,) = [one for one in plan.cautions if one.code == "repeats-miss-height"]
        assert caution.facts["stripe_cm"] is None
        assert caution.facts["row_cm"] == pytest.approx(round(rows) * HDC_CM)


def test_repeats_are_told_to_miss_the_height_from_three_per_cent() -> None:
    long = (Section(stripes=(Stripe(colour="oat", rows=7), Stripe(colour="rust", rows=13))),)
    for rows, told in ((20.6, False), (20.7, True)):  # 2.9 % and 3.4 % off
        near = planned(first_rows=(), border=(), height_cm=rows * HDC_CM, sections=long)
        assert ("repeats-miss-height" in codes(near)) is told


def test_a_last_section_may_end_with_the_whole_repeat_after() -> None:
    """By hand: 38.4 rows fit; stripes end at 27 and at 40, which is nearer."""
    long = (Section(stripes=(Stripe(colour="oat", rows=7), Stripe(colour="rust", rows=13))),)
    plan = planned(
        first_rows=(),
        border=(),
        height_cm=38.4 * HDC_CM,
        sections=long,
        stop_at=StopAt.STRIPE,
    )
    assert len(plan.rows) == 40


def test_exact_repeats_win_over_the_height() -> None:
    plan = planned(sections=(section("teal", "rust", repeats=7),), last_rows=stripes("oat"))
    assert len(plan.rows) == 1 + 14 + 1
    assert plan.rows[-1].colour == "oat"
    assert plan.rows[-1].section is None


def test_a_blanket_too_low_for_one_of_everything_names_the_least_height() -> None:
    with pytest.raises(Refused) as refused:
        planned(height_cm=4)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("blanket.height", "height-too-small")
    least = mistake.facts["smallest_cm"]
    assert isinstance(least, float)
    assert least == pytest.approx(4 * HDC_CM + 2 * SC_CM)
    assert len(planned(height_cm=least).rows) == 4


def test_a_blanket_too_narrow_for_one_repeat_names_a_width_that_works() -> None:
    with pytest.raises(Refused) as refused:
        planned(width_cm=8, multiple=20, plus=1)
    (mistake,) = refused.value.mistakes
    assert (mistake.path, mistake.code) == ("blanket.width", "width-too-small")
    least = mistake.facts["smallest_cm"]
    assert isinstance(least, float)
    assert planned(width_cm=least, multiple=20, plus=1).stitches == 21


def test_more_rows_than_anybody_works_are_refused() -> None:
    with pytest.raises(Refused, match="too-many-rows"):
        planned(sections=(section("teal", "rust", "oat", repeats=7000),))


def test_every_name_the_workshop_does_not_have_is_told_at_once() -> None:
    design = sample_design(stitch="bobble", first_rows=stripes("puce"))
    with pytest.raises(Refused) as refused:
        plan_order(sample_order(design=design, pays_in="EUR"), sample_workshop())
    found = {(one.path, one.code) for one in refused.value.mistakes}
    assert found == {
        ("blanket.stitch", "unknown-stitch"),
        ("blanket.first_rows.1.colour", "unknown-colour"),
        ("order.pays_in", "no-rate"),
    }


def test_a_single_double_crochet_across_is_a_blanket_too() -> None:
    plan = planned(stitch="dc", stitches=1)
    assert plan.foundation_chain == 3
    assert sum(plan.passes[0].stitches.values()) == 0


def test_the_size_of_a_swatch_does_not_change_its_gauge() -> None:
    swatch = sample_swatch(piece=Piece(stitches=48, rows=20, weight_g=50))
    plan = planned(sample_workshop(swatches=(swatch,)))
    assert plan.gauges[Made(WOOL, "hdc")].width_cm == pytest.approx(0.8)
