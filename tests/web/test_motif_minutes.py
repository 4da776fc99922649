"""Minutes of motifs, rounds and ends: usual until the maker gives hers, and timed by the clock."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.ground.measures import Units
from quoting.core.workshop.motifs import MotifTiming
from quoting.core.workshop.timings import USUAL_MINUTES
from quoting.web.workshop.clocked import TIMED_BY_COUNT
from tests.examples import TODAY, sample_minutes
from tests.motif_examples import motif_workshop, sample_motif
from tests.web.conftest import maker_in
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Node, Page

HERE = "/measurements"
INCHES = motif_workshop(units=Units.INCHES)
GROUP = "Motifs, rounds and ends"


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, motif_workshop(sample_motif(timings=()))) as someone:
        someone.open(HERE)
        yield someone


def group(page: Page) -> Node:
    """Return the details of the form that these minutes stand in."""
    return next(n for n in page.root.all("details") if "motifs" in n.attributes.get("class", ""))


def hint(page: Page, name: str) -> str:
    return page.with_id(f"minutes.{name}.hint").text


# -- the fields ------------------------------------------------------------------------------------


def test_they_stand_apart_from_the_minutes_of_every_blanket_and_folded(maker: OwnMaker) -> None:
    its = group(maker.page)
    names = [n.attributes["name"] for n in its.all("input")]
    assert sorted(names) == sorted(f"minutes.{name}" for name in USUAL_MINUTES)
    assert "open" not in its.attributes
    assert next(its.all("summary")).text == GROUP


def test_each_says_for_what_it_is_and_what_is_counted_while_it_is_blank(maker: OwnMaker) -> None:
    assert hint(maker.page, "join_as_you_go") == "For an edge of 15 cm; blank: 1"
    assert hint(maker.page, "sew_mattress") == "For each centimetre sewn; blank: 0.18"
    assert hint(maker.page, "fringe_end") == "For an end; blank: 0.3"
    assert all(f"blank: {mins[0]:g}" in hint(maker.page, n) for n, mins in USUAL_MINUTES.items())


def test_an_edge_is_told_in_inches_where_she_works_in_them() -> None:
    """15 cm are 5.9 in (NIST Handbook 44, appendix C)."""
    page = maker_in(motif_workshop(units=Units.INCHES)).open(HERE)
    assert "For one of each; an edge is one of 5.9 in" in page.root.text
    told = {row[0]: row[1] for row in page.table("Whose")[1:]}
    assert told["Joining an edge of 5.9 in as you go"] == "1"


def test_sewing_is_told_of_a_centimetre_and_of_its_inches(tmp_path: Path) -> None:
    """What is typed is of a centimetre, also where lengths are in inches: the file says so."""
    told = {row[0]: row[1] for row in maker_in(INCHES).open(HERE).table("Whose")[1:]}
    assert told["Sewing a centimetre (0.39 in) in whipstitch"] == "0.12"
    with own_maker(tmp_path, INCHES) as maker:
        said = hint(maker.open(HERE), "sew_mattress")
        assert said == "For each centimetre (0.39 in) sewn; blank: 0.18"


def test_inches_that_were_sewn_are_timed_as_inches(tmp_path: Path) -> None:
    """Ten inches are 25.4 cm exactly (NIST Handbook 44, appendix C): 5 minutes are 0.197 each."""
    with own_maker(tmp_path, INCHES) as maker:
        asked = maker.open(HERE).with_id("clock.task")
        options = {one.attributes["value"]: one.text for one in asked.all("option")}
        assert options["sew_whipstitch"] == "inches sewn in whipstitch"
        assert options["begin_round"] == "rounds begun and joined"
        for task, each in (("sew_whipstitch", "0.197"), ("begin_round", "0.5")):
            timed = {"clock__minutes": "5", "clock__ends": "10", "clock__task": task}
            page = maker.press(HERE, "clock ends", **timed)
            assert page.typed("own")[f"minutes.{task}"] == each


def test_hers_are_kept_and_unfolded(maker: OwnMaker) -> None:
    page = maker.press(HERE, minutes__sew_whipstitch="0.1; 0.14", minutes__lay_out="0")
    assert maker.workshop.minutes.sew_whipstitch == (0.1, 0.14)
    assert maker.workshop.minutes.lay_out == (0,)
    assert "open" in group(page).attributes


def test_a_mistake_in_one_unfolds_them(maker: OwnMaker) -> None:
    page = maker.press(HERE, minutes__enclose_end="-1")
    assert (maker.status, maker.version) == (422, 1)
    assert page.said_of("minutes.enclose_end")
    assert "open" in group(page).attributes


def test_what_is_usual_for_all_is_not_passed_off_as_hers_where_it_is_counted_anyhow(
    maker: OwnMaker,
) -> None:
    typed = maker.press(HERE, "usual all", minutes__join="").typed("own")
    assert typed["minutes.join"] == "1.5"
    assert {typed[f"minutes.{name}"] for name in USUAL_MINUTES} == {""}


def test_what_follows_says_whose_they_are() -> None:
    minutes = sample_minutes(begin_round=(0.4, 0.6, 0.8))
    head, *rows = maker_in(motif_workshop(minutes=minutes)).open(HERE).table("Whose")
    assert head == ["For one of each; an edge is one of 15 cm", "Minutes", "Whose"]
    shown = {row[0]: row[1:] for row in rows}
    assert len(shown) == len(USUAL_MINUTES)
    assert shown["Beginning and joining a round"] == ["0.6", "yours, 3 readings"]
    assert shown["Laying motifs out"] == ["15", "as is usual"]


# -- the clock -------------------------------------------------------------------------------------


def test_motifs_that_were_timed_are_a_further_timing_of_theirs(maker: OwnMaker) -> None:
    timed = {"motifs": "4", "minutes": "80.5", "motif": "fen square"}
    page = maker.press(HERE, "clock motifs", **{f"clock__{n}": text for n, text in timed.items()})
    typed = page.typed("own")
    assert (typed["clock.minutes"], typed["clock.motifs"]) == ("", "")
    maker.press(HERE)
    (motif,) = maker.workshop.motifs
    assert motif.timings == (MotifTiming(motifs=4, minutes=80.5, hands_on=True, day=TODAY),)


def test_a_motif_that_is_not_there_takes_no_timing_and_nothing_is_saved(maker: OwnMaker) -> None:
    page = maker.press(
        HERE, "clock motifs", clock__motif="moon", clock__motifs="4", clock__minutes="80"
    )
    assert "Choose the motif that was timed." in page.root.text
    assert page.typed("own")["clock.motifs"] == "4"
    assert maker.version == 1


def test_without_a_motif_there_is_none_to_time(maker: OwnMaker) -> None:
    page = maker.press(HERE, "remove motifs.1")
    assert not [n for n in page.root.all("select") if n.attributes["name"] == "clock.motif"]


@pytest.mark.parametrize("name", TIMED_BY_COUNT)
def test_what_was_counted_is_a_further_reading_for_one(maker: OwnMaker, name: str) -> None:
    before = getattr(maker.workshop.minutes, name) or ()
    timed = {"clock__minutes": "3.1", "clock__ends": "25", "clock__task": name}
    maker.press(HERE, "clock ends", **timed)
    maker.press(HERE)
    assert getattr(maker.workshop.minutes, name) == (*before, 0.124)
