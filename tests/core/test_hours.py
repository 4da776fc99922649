"""How long the work takes, and how sure that is."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.chores import Part, Workload
from quoting.core.estimate.estimate import estimate_plan
from quoting.core.estimate.hours import Hours, Task, work_hours
from quoting.core.estimate.pace import Session, pace_of, timings_wanted
from quoting.core.estimate.stitching_time import basic_session, stitching_times
from quoting.core.ground.errors import Refused
from quoting.core.plan.gauge import Sureness
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.selling import Pay
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import Minutes, Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import WOOL, sample_minutes, sample_order, sample_workshop

T_4 = 2.776
"""Two-sided 95 % point of Student's t, 4 degrees of freedom (any table)."""


def timing(**changes: Any) -> Timing:
    return replace(Timing(stitch="hdc", stitches=500, minutes=25), **changes)


def timed(*timings: Timing, **changes: Any) -> Workshop:
    return sample_workshop(timings=timings, **changes)


def work(**changes: Any) -> Workload:
    nothing = Workload(
        stitches={}, turns=0, colour_changes=0, joins=0, ends=0, blankets=0, extras_minutes=0
    )
    return replace(nothing, **changes)


def test_the_pace_weighs_sessions_by_their_stitches() -> None:
    pace = pace_of([Session(count=100, minutes=6), Session(count=300, minutes=14)])
    assert pace.minutes_each == pytest.approx(0.05)


def test_one_session_is_thirty_per_cent_unsure() -> None:
    span = pace_of([Session(count=100, minutes=5)]).predict(1000)
    assert (span.minutes, span.half_width) == pytest.approx((50, 15))


def test_five_equal_sessions_give_the_prediction_of_a_total() -> None:
    """By hand: minutes 9, 10, 11, 10, 10 for 100 each; s = 0.7071 a session; 20 sessions more."""
    minutes = (9, 10, 11, 10, 10)
    pace = pace_of([Session(count=100, minutes=m) for m in minutes])
    span = pace.predict(2000)
    expected = T_4 * math.sqrt(0.5) * math.sqrt(20 + 20**2 / 5)
    assert (span.minutes, span.half_width) == pytest.approx((200, expected), rel=1e-3)


def test_fewer_than_five_sessions_take_the_narrower_range() -> None:
    wild = pace_of([Session(count=100, minutes=m) for m in (5, 15)]).predict(1000)
    assert wild.half_width == pytest.approx(0.30 * wild.minutes)
    calm = pace_of([Session(count=100, minutes=m) for m in (10, 10, 10)]).predict(1000)
    assert calm.half_width == pytest.approx(0, abs=1e-9)


def test_five_wild_sessions_are_as_unsure_as_they_are_and_never_under_nothing() -> None:
    span = pace_of([Session(count=10, minutes=m) for m in (1, 1, 1, 1, 60)]).predict(10)
    assert span.half_width > span.minutes
    assert span.low == 0
    assert span.high == span.minutes + span.half_width


def test_row_turns_inside_a_session_are_taken_out() -> None:
    workshop = timed(timing(), minutes=sample_minutes(turn=(0.2, 0.4)))
    assert basic_session(timing(rows=10), workshop, "").minutes == pytest.approx(25 - 10 * 0.3)


def test_a_session_that_is_all_turns_is_refused_at_its_place() -> None:
    workshop = timed(timing(minutes=1, rows=10))
    with pytest.raises(Refused, match=r"timings\.1\.minutes: turns-take-all"):
        stitching_times({(WOOL, "hdc"): 10}, workshop)


def test_rest_is_added_to_sessions_without_pauses_only() -> None:
    pay = Pay(making_per_hour=Decimal(14), office_per_hour=Decimal(14), rest_allowance=0.2)
    workshop = timed(timing(), pay=pay)
    assert basic_session(timing(hands_on=True), workshop, "").minutes == pytest.approx(30)
    assert basic_session(timing(), workshop, "").minutes == 25


@pytest.mark.parametrize(
    ("stitch", "ratio"), [("ch", 1 / 3), ("sc", 2 / 3), ("dc", 4 / 3), ("tr", 2)]
)
def test_a_kind_never_timed_takes_time_by_its_yarn_overs(stitch: str, ratio: float) -> None:
    (time,) = stitching_times({(WOOL, stitch): 1000}, timed(timing()))
    assert time.minutes_each == pytest.approx(0.05 * ratio)
    assert time.sureness is Sureness.ESTIMATED
    assert [guess.limits for guess in time.guesses] == [0.15]


def test_a_timed_pattern_has_its_own_pace_and_an_untimed_one_a_guess_from_its_kind() -> None:
    moss = Pattern(name="moss", like=Stitch.HDC)
    own = timed(timing(), timing(stitch="moss", minutes=40), patterns=(moss,))
    assert stitching_times({(WOOL, "moss"): 10}, own)[0].minutes_each == pytest.approx(0.08)
    like = timed(timing(), patterns=(moss,))
    (time,) = stitching_times({(WOOL, "moss"): 10}, like)
    assert (time.minutes_each, time.sureness) == (0.05, Sureness.ESTIMATED)
    assert [guess.limits for guess in time.guesses] == [0.5]


def test_the_timed_kind_nearest_in_time_is_taken() -> None:
    both = timed(timing(), timing(stitch="tr", minutes=90))
    assert stitching_times({(WOOL, "sc"): 1}, both)[0].basis.stitch == "hdc"
    assert stitching_times({(WOOL, "dc"): 1}, both)[0].basis.stitch == "hdc"


def test_what_rests_on_one_timing_errs_together() -> None:
    """By hand: 30 % of 50 + 30 % of 33.3 minutes; and 15 % of the 33.3 in squares."""
    hours = work_hours(
        work(stitches={(WOOL, "hdc"): 1000, (WOOL, "sc"): 1000}), timed(timing(), minutes=Minutes())
    )
    together = 0.3 * (50 + 100 / 3)
    assert hours.span.half_width == pytest.approx(math.hypot(together, 0.15 * 100 / 3))


def test_each_of_six_blankets_is_packed_and_an_order_photographed_and_written_of_once() -> None:
    minutes = sample_minutes(start_and_finish=(0.0,), wash=(0.0,))
    hours = work_hours(work(blankets=6), timed(timing(), minutes=minutes))
    assert {task.what: task.count for task in hours.tasks} == {
        "photograph": 1,
        "pack": 6,
        "letters": 1,
    }


def test_what_takes_no_minutes_is_kept_apart_given_as_nothing_or_not_given() -> None:
    minutes = sample_minutes(wash=None, swatch=(0.0,), rip_back=0.0, join=None)
    hours = work_hours(
        work(stitches={(WOOL, "hdc"): 100}, blankets=1), timed(timing(), minutes=minutes)
    )
    assert {task.what for task in hours.idle} >= {"wash", "swatch", "rip_back", "extras"}
    assert "join" not in {task.what for task in hours.every_task}, "there is none to do"
    assert not {task.what for task in hours.idle} & {task.what for task in hours.tasks}
    assert [task.what for task in hours.every_task][:2] == ["hdc", "rip_back"]
    assert set(hours.every_task) == {*hours.tasks, *hours.idle}


def test_other_work_errs_on_its_own() -> None:
    workshop = timed(timing(), minutes=sample_minutes())
    hours = work_hours(work(ends=12, joins=2), workshop)
    assert hours.span.minutes == pytest.approx(12 * 2.5 + 2 * 1.5 + 60)
    squares = (12 * 2.5, 2 * 1.5, 15, 45)
    assert hours.span.half_width == pytest.approx(0.3 * math.hypot(*squares))


def test_minutes_measured_several_times_narrow_the_range() -> None:
    calm = sample_minutes(weave_in_end=(2.4, 2.5, 2.6, 2.5, 2.5))
    hours = work_hours(work(ends=40), timed(timing(), minutes=calm))
    (weaving,) = [task for task in hours.tasks if task.part is Part.WEAVING_IN]
    assert weaving.sureness is Sureness.MEASURED
    assert weaving.minutes == pytest.approx(100)
    assert weaving.half_width_min == pytest.approx(
        T_4 * math.sqrt(0.005) * math.sqrt(40 + 40**2 / 5), rel=1e-3
    )


def test_ripping_back_is_a_share_of_the_stitching_alone() -> None:
    workshop = timed(timing(), minutes=sample_minutes(rip_back=0.1))
    hours = work_hours(work(stitches={(WOOL, "hdc"): 6000}, turns=100), workshop)
    assert hours.of(Part.STITCHING) == Decimal("5.50")


def test_totals_add_the_rounded_parts() -> None:
    """Three parts of 0.005 h each round up to 0.01 h and add to 0.03 h, not 0.015 h."""
    parts = (Part.TURNING, Part.JOINING, Part.CHANGING)
    tasks = tuple(
        Task(
            part=p,
            what=p,
            count=1,
            minutes_each=0.3,
            sureness=Sureness.MEASURED,
            shared_min=0,
        )
        for p in parts
    )
    hours = Hours(tasks=tasks)
    assert (hours.making, hours.office, hours.total) == (
        Decimal("0.03"),
        Decimal(0),
        Decimal("0.03"),
    )


def test_office_hours_are_those_of_photographs_packing_and_letters() -> None:
    hours = work_hours(work(blankets=1), timed(timing()))
    assert hours.office == Decimal("1.25")
    assert hours.making == Decimal("0.67")


def test_the_cot_blankets_work_is_counted() -> None:
    order, workshop = sample_order(), sample_workshop()
    tasks = estimate_plan(plan_order(order, workshop), order, workshop).hours.tasks
    counts = {task.what: task.count for task in tasks}
    assert counts["hdc"] == 98 * 103
    assert counts["sc"] == 440
    assert counts["ch"] == 100 + 102 * 2 + 8
    assert (counts["turn"], counts["change_colour"]) == (102, 102)
    assert (counts["weave_in_end"], counts["join"]) == (12, 3)
    assert (counts["wash"], counts["letters"]) == (1, 1)


def test_a_second_blanket_doubles_the_work_but_not_the_letters() -> None:
    order, workshop = sample_order(quantity=2), sample_workshop()
    tasks = estimate_plan(plan_order(order, workshop), order, workshop).hours.tasks
    counts = {task.what: task.count for task in tasks}
    assert (counts["hdc"], counts["turn"], counts["wash"]) == (2 * 98 * 103, 204, 2)
    assert counts["change_colour"] == 204
    assert (counts["letters"], counts["photograph"]) == (1, 1)
    minutes = {task.what: task.minutes for task in tasks}
    assert minutes["extras"] == 2 * 5


def test_equal_timings_want_no_more() -> None:
    assert timings_wanted([5, 5]) == 0
    assert timings_wanted([5, 5.01, 4.99]) == 0
    assert timings_wanted([4, 6]) > 0


def test_the_range_lies_evenly_round_the_hours_that_are_printed() -> None:
    """By hand: eight parts of 0.3 min are 0.01 h each, together 0.08 h, not 2.4 min or 0.04 h."""
    short = Task(
        part=Part.STITCHING,
        what="sc",
        count=1,
        minutes_each=0.3,
        sureness=Sureness.ONE_TIMING,
        shared_min=0.3,
    )
    hours = Hours(tasks=tuple(replace(short, part=part, what=part.value) for part in Part))
    assert hours.total == Decimal("0.08")
    assert hours.total - hours.low == hours.high - hours.total == Decimal("0.01")
