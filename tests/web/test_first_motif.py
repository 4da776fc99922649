"""A newcomer who joins squares: her first steps need no swatch in rows, but one weighed motif."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.quote.quote import quote_order
from quoting.core.workshop.motifs import MotifTiming, WeighedMotifs
from tests.examples import TODAY
from tests.motif_examples import sample_squares, squares_order
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Page

HERE = "/first-steps"
MOTIF = {
    "rounds": "5",
    "side": "15",
    "weighed__motifs": "5",
    "weighed__weight": "60",
    "timings__1__motifs": "4",
    "timings__1__minutes": "80",
}


@pytest.fixture
def beginner(tmp_path: Path) -> Iterator[OwnMaker]:
    """Return a newcomer who has told her name and one yarn."""
    with own_maker(tmp_path, None) as someone:
        someone.open(HERE)
        answer(someone, workshop__name="Hollin Edge")
        label = {"name": "fell aran", "category": "4", "colours__1__name": "oat"}
        label |= {f"put_ups__1__{k}": v for k, v in MADE_UP.items()}
        answer(someone, **{f"yarns__1__{name}": text for name, text in label.items()})
        answer(someone, "skip")
        yield someone


MADE_UP = {"grams": "100", "metres": "180 m", "price": "5.20"}


def answer(beginner: OwnMaker, do: str = "next", **typed: str) -> Page:
    return beginner.press(HERE, do, **typed)


def measure(beginner: OwnMaker, do: str = "next", **typed: str) -> Page:
    """Answer the question of the motif."""
    its = {f"motifs__1__{name}": text for name, text in (MOTIF | typed).items()}
    return answer(beginner, do, **its)


def finish(beginner: OwnMaker) -> None:
    """Answer what else a quote needs, and begin."""
    answer(beginner, timings__1__stitch="dc", timings__1__stitches="200", timings__1__minutes="12")
    answer(beginner, pay__making_per_hour="13", workshop__hours_per_week="15")
    answer(beginner, "skip")
    answer(beginner, "begin")


def test_a_blanket_of_squares_is_quoted_from_one_weighed_motif(beginner: OwnMaker) -> None:
    assert beginner.page.typed("own")["motifs.1.yarn"] == "fell aran"
    page = measure(beginner)
    assert "from your motif: its side and its yarn" in page.root.text
    finish(beginner)
    (motif,) = beginner.workshop.motifs
    assert (motif.name, motif.side_cm, beginner.workshop.swatches) == ("square", 15, ())
    assert motif.weighed == WeighedMotifs(motifs=5, weight_g=60)
    assert motif.timings == (MotifTiming(motifs=4, minutes=80, hands_on=True),)
    squares = sample_squares(("oat",) * 5, motif="square")
    order = squares_order(yarn="fell aran", body=squares, border=())
    assert quote_order(order, beginner.workshop, today=TODAY).price.total > 0


def test_a_motif_that_was_not_timed_will_do(beginner: OwnMaker) -> None:
    page = measure(beginner, timings__1__motifs="", timings__1__minutes="")
    assert beginner.status == 200
    assert "A timing" in page.headings
    finish(beginner)
    assert beginner.workshop.motifs[0].timings == ()


def test_a_timed_motif_stands_for_a_timing_that_is_skipped(beginner: OwnMaker) -> None:
    page = measure(beginner)
    assert "You timed your motif" in page.root.text
    page = answer(beginner, "skip")
    assert "all its stitches in its minutes" in page.root.text
    answer(beginner, pay__making_per_hour="13", workshop__hours_per_week="15")
    answer(beginner, "skip")
    answer(beginner, "begin")
    (timing,) = beginner.workshop.timings
    # 12 + 24 + 36 + 48 + 60 stitches in clusters, in the 80 minutes of four.
    assert (timing.stitch, timing.yarn, timing.stitches) == ("dc", "fell aran", 180)
    assert (timing.minutes, timing.hands_on) == (20, True)


def test_neither_a_stitch_nor_a_motif_timed_is_told_at_the_end(beginner: OwnMaker) -> None:
    page = measure(beginner, timings__1__motifs="", timings__1__minutes="")
    assert "You timed your motif" not in page.root.text
    answer(beginner, "skip")
    answer(beginner, pay__making_per_hour="13", workshop__hours_per_week="15")
    answer(beginner, "skip")
    page = answer(beginner, "begin")
    assert beginner.status == 422
    assert "nobody can guess them" in page.root.text


def test_who_measured_a_square_and_no_swatch_begins_with_squares(beginner: OwnMaker) -> None:
    measure(beginner)
    finish(beginner)
    fields = beginner.open("/blank").typed()
    assert fields["blanket.construction"] == "squares"
    assert fields["blanket.squares.motif"] == "square"
    assert fields["blanket.squares.layouts.1.colours.5.value"] == "oat"
    beginner.client.post("/answer", data=fields | {"blanket.width": "90", "blanket.height": "90"})
    assert beginner.open("/sizes").headings


def test_who_measured_a_circle_begins_with_rows(beginner: OwnMaker) -> None:
    measure(beginner, counting="circle")
    finish(beginner)
    fields = beginner.open("/blank").typed()
    assert "blanket.sections.1.stripes.1.colour" in fields


def test_who_works_in_rows_skips_it(beginner: OwnMaker) -> None:
    answer(beginner, "skip")
    finish(beginner)
    assert beginner.workshop.motifs == ()


def test_next_without_an_answer_is_a_skip(beginner: OwnMaker) -> None:
    page = answer(beginner)
    assert "A timing" in page.headings
    assert "blankets in rows need none" in page.root.text


def test_a_question_seen_in_passing_hinders_nobody_from_beginning(beginner: OwnMaker) -> None:
    answer(beginner, "to swatch")
    answer(beginner, "to motif")
    measure(beginner, "to timing")
    finish(beginner)
    assert beginner.workshop.motifs
    assert beginner.workshop.swatches == ()


def test_what_was_typed_in_part_is_not_thrown_away(beginner: OwnMaker) -> None:
    page = answer(beginner, motifs__1__timings__1__minutes="25")
    assert beginner.status == 422
    assert page.said_of("motifs.1.side")
    assert page.typed("own")["motifs.1.timings.1.minutes"] == "25"


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"side": "wide"}, "side"),
        ({"two_joined": "30"}, "side"),
        ({"weighed__motifs": "", "weighed__weight": ""}, "weighed.motifs"),
        ({"timings__1__minutes": ""}, "timings.1.minutes"),
        ({"name": "dc"}, "name"),
    ],
)
def test_a_mistake_stands_beside_its_field_and_the_question_stays(
    beginner: OwnMaker, typed: dict[str, str], field: str
) -> None:
    page = measure(beginner, **typed)
    assert beginner.status == 422
    assert "A motif, if you join squares" in page.headings
    assert page.said_of(f"motifs.1.{field}")
    fields = page.typed("own")
    for name, text in (MOTIF | typed).items():
        assert fields[f"motifs.1.{name.replace('__', '.')}"] == text


def test_the_question_says_how_to_measure_and_to_mind_ones_hands(beginner: OwnMaker) -> None:
    text = beginner.page.with_id("own").text
    for words in ("washed and dried flat", "tails cut off", "weigh them together", "hands ache"):
        assert words in text
