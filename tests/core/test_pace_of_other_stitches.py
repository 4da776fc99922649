"""Stitches reckoned from the timing of another, and work that is once an order."""

from __future__ import annotations

from dataclasses import replace
from math import fsum

import pytest

from quoting.core.estimate.chores import Part, Workload
from quoting.core.estimate.hours import work_hours
from quoting.core.estimate.pace import timings_wanted
from quoting.core.estimate.stitching_time import paces_of, stitching_times
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import TimedStitch, Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import WOOL, sample_minutes, sample_workshop

HDC = tuple(Timing(stitch="hdc", stitches=100, minutes=m) for m in (9, 10, 11, 10, 10, 12))
NOTHING = Workload(
    stitches={}, turns=0, colour_changes=0, joins=0, ends=0, blankets=0, extras_minutes=0
)


def timed(*timings: Timing) -> Workshop:
    return sample_workshop(timings=timings)


def test_stitches_of_one_timing_are_together_as_unsure_as_that_many_of_the_timed_kind() -> None:
    """Yarn-overs: a double crochet takes 4/3 of a half double crochet, so 300 are 400."""
    workshop = timed(*HDC)
    times = stitching_times({(WOOL, "hdc"): 1000, (WOOL, "dc"): 300}, workshop)
    together = paces_of(workshop)[TimedStitch(stitch="hdc")].predict(1400).half_width
    assert fsum(time.shared_min for time in times) == pytest.approx(together)
    assert [time.shared_min for time in times] == pytest.approx(
        [together * 1000 / 1400, together * 400 / 1400]
    )


@pytest.mark.parametrize(
    ("timings", "stitch", "basis"),
    [
        (("sc", "tr"), "hdc", "sc"),  # 3 against 2 and 6: one and a half times, or half
        (("sc", "tr"), "dc", "tr"),  # 4 against 2 and 6: twice, or two thirds
        (("hdc", "tr"), "dc", "hdc"),
        (("tr", "dc"), "sc", "dc"),
        (("sc", "dc"), "ch", "sc"),
    ],
)
def test_a_stitch_never_timed_is_reckoned_from_the_one_nearest_in_ratio(
    timings: tuple[str, ...], stitch: str, basis: str
) -> None:
    workshop = timed(*(Timing(stitch=name, stitches=100, minutes=9) for name in timings))
    assert stitching_times({(WOOL, stitch): 10}, workshop)[0].basis.stitch == basis


def test_a_pattern_never_timed_has_the_pace_of_its_kind_before_that_of_another_pattern() -> None:
    moss, heather = (Pattern(name=name, like=Stitch.HDC) for name in ("moss", "heather"))
    slow = Timing(stitch="moss", stitches=100, minutes=20)
    workshop = sample_workshop(timings=(slow, *HDC), patterns=(moss, heather))
    assert stitching_times({(WOOL, "heather"): 10}, workshop)[0].basis.stitch == "hdc"


def test_a_swatch_is_made_once_an_order_and_only_where_it_takes_time() -> None:
    def swatching(minutes: tuple[float, ...]) -> list[tuple[float, float]]:
        workshop = replace(timed(*HDC), minutes=sample_minutes(swatch=minutes))
        tasks = work_hours(replace(NOTHING, blankets=3), workshop).tasks
        return [(t.count, t.minutes) for t in tasks if t.what == "swatch"]

    assert swatching((40.0,)) == [(1, 40)]
    assert swatching((0.0,)) == []


def test_work_that_takes_no_time_is_no_task() -> None:
    tasks = work_hours(replace(NOTHING, blankets=1), timed(*HDC)).tasks
    assert {task.part for task in tasks} == {Part.FINISHING, Part.OFFICE}
    assert all(task.minutes for task in tasks)


def test_the_more_timings_differ_the_more_are_wanted() -> None:
    """By hand, s/mean is 0.05 and 0.1 root 2.5/2, and t of four degrees of freedom 2.776.

    Of five readings 9, 9, 10, 11, 11: s = 1, mean 10, (2.776 x 1 / 0.5)² = 30.8, so 31.
    """
    assert timings_wanted([9, 9, 10, 11, 11]) == 31 - 5
    assert timings_wanted([9.5, 9.5, 10, 10.5, 10.5]) == 8 - 5


def test_two_timings_ask_for_far_more_than_the_normal_law_would() -> None:
    """By hand: t of one degree is 12.706, s = root 2: (12.706 x 1.4142 / 0.5)² = 1291.6."""
    assert timings_wanted([9, 11]) == 1292 - 2
