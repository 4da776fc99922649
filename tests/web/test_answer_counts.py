"""Size, yarn, ends and hours beside the order form, each figure by its heading or its name."""

from __future__ import annotations

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.plan.passes import Work
from quoting.wording import (
    edge_words,
    part_words,
    pass_words,
    point_words,
    sureness_words,
    task_words,
)
from tests.examples import COLOURS
from tests.web.pages import Page
from tests.web.read_answer import QUOTE, SAY, answered, columns, part, plain


@pytest.fixture(scope="module")
def page() -> Page:
    return answered()


def test_every_section_has_its_heading(page: Page) -> None:
    names = ("price", "days", "hours", "yarn", "ends", "size", "advice")
    headings = [next(part(page, name).all("h2")).text for name in names]
    assert headings == [
        "Cost and price",
        "Days",
        "Hours",
        "Yarn",
        "Ends",
        "Size and counts",
        "Advice",
    ]
    assert page.headings[1:] == headings


# -- size and counts -------------------------------------------------------------------------------


def test_the_size_that_comes_out_stands_before_the_one_that_was_asked(page: Page) -> None:
    plan = QUOTE.plan
    out, asked = SAY.size(plan.width_cm, plan.height_cm), SAY.size(61, 75)
    said = next(part(page, "size").all("p")).text
    assert said == plain(f"{out} comes out, where {asked} was asked.")


def test_stitches_rows_and_rounds_are_counted(page: Page) -> None:
    plan, text = QUOTE.plan, part(page, "size").text
    assert f"{plan.stitches} stitches in a row" in text
    assert f"{len(plan.rows)} rows, 3 border rounds" in text
    assert f"Chain {plan.foundation_chain}, first " in text
    items = [item.text for item in part(page, "size").all("li")]
    rounds = [
        f"Border round {n}: {r.stitches['sc']} stitches of sc" for n, r in enumerate(plan.rounds, 1)
    ]
    assert [item for item in items if item.startswith("Border")] == rounds
    sections = [item for item in items if item.startswith("Section")]
    assert [item.split(":")[1].split(",")[0].strip() for item in sections] == [
        f"{rows} rows" for rows in plan.rows_by_section
    ]


def test_rows_are_told_with_their_colour_their_stitch_and_their_height(page: Page) -> None:
    table = columns(page, "Worked")
    rows = [row for row in QUOTE.plan.passes if row.work is Work.ROW]
    second, third = rows[1:3]
    assert table["Worked"][:3] == ["Foundation chain", "Row 1", "Rows 2–3"]
    assert table["Colour"][:3] == ["oat", "oat", "plum"]
    assert table["Stitch"][:3] == ["ch", "hdc", "dc"]
    height = SAY.bare_length(second.height_cm + third.height_cm, 2)
    assert table["Length, cm"][2] == height


# -- yarn ------------------------------------------------------------------------------------------


def bare(metres: float) -> str:
    return SAY.yarn_length(metres).partition("\u00a0")[0]


def test_each_colours_yarn_stands_under_its_headings(page: Page) -> None:
    table = columns(page, "To have, m")
    colours = QUOTE.estimate.colours
    assert table["Colour"] == [colour.colour for colour in colours]
    assert table["Yarn used, m"] == [bare(colour.metres) for colour in colours]
    assert table["To have, m"] == [bare(colour.metres_to_buy) for colour in colours]
    assert table["Left, m"] == [bare(colour.metres_left) for colour in colours]
    assert table["To buy"] == [
        plain(f"{colour.choice.skeins} × 40 g") if colour.choice.skeins else "none"
        for colour in colours
    ]
    assert table["From stock"] == [
        plain(SAY.weight(colour.from_stock_g)) if colour.from_stock_g else "none"
        for colour in colours
    ]


def test_each_ball_that_is_used_up_says_where(page: Page) -> None:
    items = [item.text for item in part(page, "yarn").all("li")]
    for item, colour in zip(items, QUOTE.estimate.colours, strict=True):
        assert item.startswith(f"{colour.colour}: ")
        ends = [e.expected for e in colour.ball_ends if e.expected is not None]
        for number, point in enumerate(ends, 1):
            assert f"Skein {number} is used up {point_words(point, QUOTE.plan)}." in item
        assert item.count("is used up") == len(ends)
    assert any("is used up" in item for item in items)


def test_a_dot_beside_a_colour_is_of_that_colour(page: Page) -> None:
    for table in (part(page, name) for name in ("yarn", "ends", "size")):
        for row in table.all("tr"):
            circles = list(row.all("circle"))
            if circles:
                named = [name for name in COLOURS if name in row.text.split()]
                assert [c.attributes["fill"] for c in circles] == [COLOURS[n] for n in named]


# -- ends ------------------------------------------------------------------------------------------


def test_ends_are_two_to_a_strand_and_it_is_said_what_becomes_of_the_strands(page: Page) -> None:
    estimate, text = QUOTE.estimate, part(page, "ends").text
    assert f"{estimate.ends} = 2 × {len(estimate.strands)} strands" in text
    assert f"{estimate.ended(Why.FINISHED)} fastened off, {estimate.ended(Why.CUT)} cut" in text
    assert f"{estimate.ended(Why.RAN_OUT)} where a new skein is joined" in text
    assert f"carried up {estimate.carries} times" in text
    assert len({estimate.ended(why) for why in Why}) == 3


def test_every_strand_stands_with_its_two_ends_under_its_headings(page: Page) -> None:
    table, plan = columns(page, "Carried up"), QUOTE.plan
    strands = QUOTE.estimate.strands
    assert table["Colour"] == [strand.colour for strand in strands]
    for heading, point_of in (("Starts", lambda s: s.starts), ("Ends", lambda s: s.ends)):
        expected = []
        for point in map(point_of, strands):
            worked = plan.passes[point.pass_index]
            words = f"{pass_words(worked)}, {edge_words(point.edge, worked.work, SAY)}"
            expected.append(words[0].upper() + words[1:])
        assert table[heading] == expected
    assert table["Carried up"] == [str(len(strand.carries)) for strand in strands]
    assert table["Yarn"] == [plain(SAY.yarn_length(strand.yarn_m)) for strand in strands]
    assert len(set(table["Then"])) == 3


# -- hours -----------------------------------------------------------------------------------------


def test_hours_and_their_parts_stand_beside_their_names(page: Page) -> None:
    hours, text = QUOTE.estimate.hours, part(page, "hours").text
    assert plain(SAY.hours(hours.total)) in text.split(",")[0]
    assert plain(SAY.hours_range(hours.low, hours.high)) in text
    summaries = [n.text for n in part(page, "hours").all("summary")]
    parts = dict.fromkeys(task.part for task in hours.tasks if hours.of(task.part))
    assert sorted(summaries) == sorted(
        plain(f"{part_words(each, SAY)} {SAY.hours(hours.of(each))}") for each in parts
    )


def test_every_task_is_a_line_of_its_own_part(page: Page) -> None:
    hours = QUOTE.estimate.hours
    for details in part(page, "hours").all("details"):
        (name,) = (span.text for span in details.all("span"))
        mine = [task for task in hours.tasks if part_words(task.part, SAY) == name]
        items = [item.text for item in details.all("li")]
        for item, task in zip(items, mine, strict=True):
            assert item.startswith(plain(f"{task_words(task.what, SAY)}: "))
            assert f"× {SAY.trimmed(task.minutes_each, 3)} min" in item
            assert f"= {SAY.trimmed(task.minutes, 1)} min" in item
            assert sureness_words(task.sureness) in item
