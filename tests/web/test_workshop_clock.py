"""What a clock of the workshop told, and usual minutes, taken over into its fields."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.examples import sample_workshop
from tests.web.own_maker import OwnMaker, own_maker


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, sample_workshop()) as someone:
        yield someone


def test_what_was_timed_becomes_a_further_timing(maker: OwnMaker) -> None:
    maker.open("/measurements")
    timed = {"minutes": "7.25", "stitches": "140", "stitch": "hdc", "yarn": "moor aran"}
    timed |= {"hook_mm": "5.5", "rows": "4"}
    typed = {f"clock__{name}": text for name, text in timed.items()}
    before = len(maker.workshop.timings)
    page = maker.press("/measurements", "clock timing", **typed)
    assert page.typed("own")["clock.minutes"] == ""
    maker.press("/measurements")
    timing = maker.workshop.timings[before]
    assert (timing.stitches, timing.minutes, timing.yarn) == (140, 7.25, "moor aran")
    assert (timing.hook_mm, timing.rows, timing.hands_on) == (5.5, 4, True)


def test_ends_that_were_timed_are_a_further_reading_for_one(maker: OwnMaker) -> None:
    maker.open("/measurements")
    before = maker.workshop.minutes.weave_in_end or ()
    maker.press("/measurements", "clock ends", clock__minutes="12.5", clock__ends="5")
    maker.press("/measurements")
    assert maker.workshop.minutes.weave_in_end == (*before, 2.5)


@pytest.mark.parametrize(("minutes", "ends"), [("", "5"), ("12", "0"), ("12", "five"), ("-1", "5")])
def test_ends_that_cannot_be_shared_out_are_asked_for(
    maker: OwnMaker, minutes: str, ends: str
) -> None:
    maker.open("/measurements")
    page = maker.press("/measurements", "clock ends", clock__minutes=minutes, clock__ends=ends)
    assert "Type how many there were, and in how many minutes." in page.root.text
    assert page.typed("own")["clock.ends"] == ends


def test_usual_minutes_are_offered_for_what_was_not_given(maker: OwnMaker) -> None:
    maker.open("/measurements")
    page = maker.press("/measurements", "usual all", minutes__join="", minutes__pack="7")
    typed = page.typed("own")
    assert (typed["minutes.join"], typed["minutes.pack"]) == ("1.5", "7")
    assert maker.version == 1
