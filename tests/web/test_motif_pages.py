"""Motifs on the maker's own pages: typed in, kept, refused beside their fields, told."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from quoting.core.ground.measures import Units
from quoting.core.workshop.motifs import EarlierSide, MotifTiming, WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.workshop import Workshop
from tests.examples import WOOL, sample_workshop
from tests.motif_examples import SQUARE, motif_workshop, sample_motif
from tests.web.conftest import maker_in
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Page
from tests.web.rich_workshop import rich
from tests.web.test_own_pages import typed_in
from tests.web.test_pages_as_read import cards, facts

HERE = "/measurements"
TYPED = {
    "name": "sun",
    "yarn": WOOL,
    "stitch": "dc",
    "counting": "clusters",
    "rounds": "5",
    "side": "15",
    "weighed__motifs": "5",
    "weighed__weight": "60",
}


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, sample_workshop()) as someone:
        yield someone


def add_motif(maker: OwnMaker, **typed: str) -> Page:
    """Add a motif to the page, type it in, and save."""
    maker.open(HERE)
    maker.press(HERE, "add motifs")
    return save_motif(maker, **(TYPED | typed))


def save_motif(maker: OwnMaker, **typed: str) -> Page:
    return maker.press(HERE, **{f"motifs__1__{name}": text for name, text in typed.items()})


def told(workshop: Workshop, name: str = SQUARE) -> dict[str, str]:
    """Return what the page that follows from a file tells of a motif."""
    page = maker_in(workshop).open(HERE)
    return next(facts(card) for card in cards(page) if next(card.all("h3")).text.startswith(name))


# -- typed in and kept -----------------------------------------------------------------------------


def test_one_weighed_motif_is_kept_with_a_handful_of_fields(maker: OwnMaker) -> None:
    add_motif(maker)
    assert (maker.status, maker.version) == (200, 2)
    assert maker.workshop.motifs == (sample_motif(name="sun", timings=()),)


def test_all_that_can_be_said_of_a_motif_is_typed_in(maker: OwnMaker) -> None:
    add_motif(maker)
    maker.press(HERE, "add motifs.1.timings")
    save_motif(
        maker,
        counting="solid",
        first_side="2",
        side="",
        two_joined="30.4",
        earlier__rounds="3",
        earlier__side="9.5",
        metres_by_round="1.5; 2.75 m; 4; 5.25; 6.5",
        timings__1__motifs="4",
        timings__1__minutes="80",
    )
    assert maker.status == 200
    (motif,) = maker.workshop.motifs
    assert (motif.counting, motif.first_side) == (Counting.SOLID, 2)
    assert (motif.one_side_cm, motif.two_joined_cm) == (None, 30.4)
    assert motif.earlier == EarlierSide(rounds=3, side_cm=9.5)
    assert motif.rounds_m == (1.5, 2.75, 4, 5.25, 6.5)
    assert motif.timings == (MotifTiming(motifs=4, minutes=80, hands_on=True),)


@pytest.mark.parametrize(
    ("counting", "field", "typed", "says"),
    [
        ("clusters", "first_side", "2", "This counts for solid squares and rectangles alone"),
        ("circle", "first_side", "3", "This counts for solid squares and rectangles alone"),
        ("solid", "side_chains", "2", "This counts for rounds in clusters alone"),
        ("hexagon", "side_chains", "0", "This counts for rounds in clusters alone"),
    ],
)
def test_what_counts_for_another_shape_is_refused_and_stays(
    maker: OwnMaker, counting: str, field: str, typed: str, says: str
) -> None:
    add_motif(maker)
    page = save_motif(maker, counting=counting, **{field: typed})
    assert says in page.said_of(f"motifs.1.{field}")
    assert page.typed("own")[f"motifs.1.{field}"] == typed


def test_a_timing_of_a_motif_begins_otherwise_than_one_of_a_stitch(maker: OwnMaker) -> None:
    add_motif(maker)
    typed = maker.press(HERE, "add motifs.1.timings").typed("own")
    assert {n for n in typed if n.startswith("motifs.1.timings.1.")} == {
        f"motifs.1.timings.1.{key}" for key in ("motifs", "minutes", "hands_on", "day")
    }


def test_a_motif_and_its_timings_are_taken_out_and_put_back(maker: OwnMaker) -> None:
    add_motif(maker)
    before = typed_in(maker.press(HERE, "add motifs.1.timings"))
    page = maker.press(HERE, "remove motifs.1")
    assert "Removed: motif sun." in page.with_id("main").text
    assert typed_in(maker.press(HERE, "back 1")) == before


# -- mistakes --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"two_joined": "30"}, "side", "give only one of them"),
        ({"side": ""}, "side", "give only one of them"),
        ({"metres_by_round": "1; 2; 3"}, "metres_by_round", "the motif has 5"),
        ({"metres_by_round": "1; much; 3"}, "metres_by_round", "much"),
        ({"earlier__rounds": "5", "earlier__side": "9"}, "earlier.rounds", "an earlier round"),
        ({"earlier__rounds": "3", "earlier__side": "16"}, "earlier.side", "round 3"),
        ({"name": "hdc"}, "name", "the name of a stitch or a pattern"),
        ({"name": ""}, "name", "missing"),
        ({"yarn": "fell wool"}, "yarn", "fell wool"),
        ({"stitch": "moss"}, "stitch", "moss"),
        ({"rounds": "0"}, "rounds", "1"),
        ({"weighed__motifs": "", "weighed__weight": ""}, "weighed.motifs", "or the metres"),
        ({"weighed__weight": "light"}, "weighed.weight", "light"),
    ],
)
def test_a_mistake_stands_beside_its_field_and_what_was_typed_is_kept(
    maker: OwnMaker, typed: dict[str, str], field: str, said: str
) -> None:
    page = add_motif(maker, **typed)
    assert (maker.status, maker.version) == (422, 1)
    assert said in page.said_of(f"motifs.1.{field}")
    fields = page.typed("own")
    for name, text in (TYPED | typed).items():
        assert fields[f"motifs.1.{name.replace('__', '.')}"] == text


def test_a_motif_is_told_apart_from_a_pattern_and_from_another_motif(tmp_path: Path) -> None:
    with own_maker(tmp_path, rich()) as maker:
        maker.open(HERE)
        page = save_motif(maker, name="moss stitch")
        assert "the name of a stitch or a pattern" in page.said_of("motifs.1.name")
        page = save_motif(maker, name="fell square")
        assert maker.status == 422
        assert page.said_of("motifs.2.name")


def test_a_yarn_that_is_renamed_is_renamed_in_its_motifs(tmp_path: Path) -> None:
    with own_maker(tmp_path, rich()) as maker:
        maker.open("/yarn")
        maker.press("/yarn", yarns__1__name="fell aran")
        assert {motif.yarn for motif in maker.workshop.motifs} == {"fell aran"}


# -- what follows ----------------------------------------------------------------------------------


def test_a_weighed_motif_tells_the_yarn_of_one_its_growth_and_its_minutes() -> None:
    """61 g of five, of 200 m in 100 g; (15 - 9.5) / 2; 80 and 63 × 1.12 minutes for seven."""
    shown = told(rich())
    assert shown == {
        "Day": "25 November 2026",
        "Made of": "5 rounds of dc in moor aran, 5 mm hook",
        "Side of one": "15 cm",
        "Each round adds": "2.75 cm, by its two sides; after round 3 it was 9.5 cm",
        "Yarn of one": "24.4 m, 12 g",
        "Weighed": "5 together: 61 g, on a scale that shows 1 g",
        "Minutes of one": shown["Minutes of one"],
        "How sure": "measured; the reading leaves 0.5% of its yarn",
    }
    assert shown["Minutes of one"].startswith("21.5, most likely 15.1 to 28; measured, 3 more")


def test_an_unravelled_motif_tells_its_rounds_and_that_it_was_not_timed() -> None:
    shown = told(rich(), "fell square")
    assert shown["Side of one"] == "9.2 cm, half of 18.4 cm of two that are joined"
    assert shown["Yarn of one"] == "5.4 m, 2.7 g"
    assert shown["Unravelled"] == "round 1: 0.9 m, round 2: 1.8 m, round 3: 2.7 m"
    assert shown["Minutes of one"] == "not timed: worked out from its stitches"
    assert "Weighed" not in shown


def test_what_a_round_adds_is_known_by_the_swatch_or_else_by_all_rounds_alike() -> None:
    assert told(motif_workshop())["Each round adds"] == (
        "2.22 cm, by the rows of the swatch in its stitch"
    )
    bare = replace(motif_workshop(), swatches=())
    assert told(bare)["Each round adds"] == "3 cm, all its rounds taken alike"


def test_few_on_the_scale_are_told_and_one_timing_is_no_promise() -> None:
    few = sample_motif(weighed=WeighedMotifs(motifs=1, weight_g=12))
    shown = told(motif_workshop(few))
    assert shown["Weighed"].endswith("weigh five or more , which leaves less to the scale")
    assert shown["Minutes of one"] == "20, most likely 14 to 26; timed once, 4 more timings to tell"


def test_what_is_no_square_has_a_width() -> None:
    assert told(motif_workshop(sample_motif(counting=Counting.CIRCLE)))["Width of one"] == "15 cm"


def test_in_inches_a_motif_is_told_in_inches_yards_and_ounces() -> None:
    """15 cm are 5.91 in, 24 m are 26.2 yd, 12 g are 0.42 oz (NIST Handbook 44, appendix C)."""
    shown = told(motif_workshop(units=Units.INCHES))
    assert shown["Side of one"] == "5.91 in"
    assert shown["Yarn of one"] == "26.2 yd, 0.42 oz"


def test_motifs_are_no_stitches_in_the_table_of_paces() -> None:
    rows = maker_in(rich()).open(HERE).table("Stitches a minute")
    assert [row[0] for row in rows[1:]] == ["hdc", "sc"]


def test_a_workshop_without_motifs_is_not_told_of_any() -> None:
    page = maker_in(sample_workshop()).open(HERE)
    assert "Motifs" not in page.headings
