"""The sheet of yarn: each colour's figures under their own headings, and the sums of all."""

from __future__ import annotations

import math

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.strands import Point
from quoting.core.ground.measures import Units
from quoting.core.order.design import EndsBecome
from quoting.core.quote.quote import Quote
from quoting.core.workshop.yarns import PutUp
from quoting.wording import point_words, sureness_words
from tests.examples import sample_quote, sample_workshop, sample_yarn
from tests.workbook.orders import quotes
from tests.workbook.reading import Line, as_at_home, block, by
from tests.workbook.recalculation import opened

YARDS = 0.9144
"""Metres in a yard (NIST Handbook 44, appendix C)."""


def read(content: bytes) -> Workbook:
    return opened(content, values=True)


def of_colour(colour: ColourEstimate, quote: Quote) -> dict[str, float]:
    """Return what is to stand in a colour's line, by its heading without the unit."""
    strands = colour.walk.strands
    counts = colour.yarn.counts.items()
    long = YARDS if quote.workshop.units is Units.INCHES else 1
    within = any(worked.grows for worked in quote.plan.passes)
    is_fringe = quote.order.design.ends is EndsBecome.FRINGE and not within
    habits = quote.workshop.habits
    tail_m = (habits.fringe_cm if is_fringe else habits.tail_cm) / 100
    lengths = {
        "in stitches": sum(
            n * quote.plan.gauges[s.made(colour.source.yarn)].yarn_m for s, n in counts
        )
        + colour.yarn.sewn_m,
        "carried": sum(carry.yarn_m for strand in strands for carry in strand.carries),
        "tails": len(strands) * 2 * tail_m,
        "extras": sum(e.yarn_m or 0 for e in quote.order.extras if e.colour == colour.colour)
        * quote.order.quantity,
        "yarn used": colour.metres,
        "of it for joins": colour.metres - colour.bare_m,
        "to have": colour.metres_to_buy,
        "held": math.fsum(colour.balls_m),
        "short": 0.0,
        "left over": colour.metres_left,
    }
    return {name: metres / long for name, metres in lengths.items()} | {
        "ends": 2 * len(strands),
        "reserve": colour.reserve,
        "weight": float(int(colour.grams + 0.5)),
        "from the shelf": float(int(colour.from_stock_g + 0.5)),
        "skeins": colour.choice.skeins,
        "stitches": sum(colour.yarn.counts.values()),
    }


def without_units(line: Line) -> Line:
    return {heading.partition(",")[0]: value for heading, value in line.items()}


@pytest.mark.parametrize("name", list(quotes()))
def test_each_colours_figures_stand_under_their_headings(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote = all_quotes[name]
    lines = by(block(read(written[name])["Yarn"], "Yarn used of each colour"), "colour")
    for colour in quote.estimate.colours:
        line = without_units(lines[colour.colour])
        for heading, figure in of_colour(colour, quote).items():
            assert line[heading] == pytest.approx(figure, abs=1e-6), (colour.colour, heading)
        assert line["yarn"].startswith(colour.source.yarn)


@pytest.mark.parametrize("name", list(quotes()))
def test_the_sums_are_those_of_the_lines_above_them_and_reserves_are_not_added(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    lines = block(read(written[name])["Yarn"], "Yarn used of each colour")
    unit = "yd" if all_quotes[name].workshop.units is Units.INCHES else "m"
    at = [as_at_home(str(line["colour"])) for line in lines].index("all colours")
    colours, foot = lines[:at], lines[at]
    summed = set(foot) - {"colour"}
    assert summed == set(colours[0]) - {
        "colour",
        "yarn",
        "its colour",
        "reserve",
        f"{unit} a gram",
    }
    for heading in summed:
        total = math.fsum(line[heading] for line in colours)
        assert foot[heading] == pytest.approx(total, abs=1e-6), heading


@pytest.mark.parametrize("name", ["plain", "inches", "mixed, used"])
def test_what_is_bought_is_the_skeins_of_the_quote_at_their_price(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote, sheet = all_quotes[name], read(written[name])["Yarn"]
    long = YARDS if quote.workshop.units is Units.INCHES else 1
    expected = [
        (
            colour.colour,
            some.packs,
            some.packs,
            some.balls,
            pytest.approx(some.balls * some.put_up.length_m / long),
            some.balls * some.put_up.weight_g,
            float(some.put_up.price),
            float(some.cost),
        )
        for colour in quote.estimate.colours
        for some in colour.choice.bought
    ]
    unit = "yd" if quote.workshop.units is Units.INCHES else "m"
    headings = ("colour", "packs", "packs wanted", "skeins", unit, "g", "price of a pack", "cost")
    found = [tuple(line[heading] for heading in headings) for line in block(sheet, "To buy")]
    assert found == expected


def test_what_comes_from_the_shelf_is_there_by_its_dye_lot(
    all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    lots = block(read(written["mixed, used"])["Yarn"], "From the shelf")
    expected = {
        (colour.colour, ball.lot, ball.weight_g, ball.weight_g * colour.metres_per_gram)
        for colour in all_quotes["mixed, used"].estimate.colours
        for ball in colour.choice.stock
    }
    assert expected
    assert {(lot["colour"], lot["dye lot"], lot["g"], lot["m"]) for lot in lots} == expected


def test_balls_and_their_prices_are_the_yarns(written: dict[str, bytes]) -> None:
    """The yarn's balls: of 100 g at 4.60, ten of them at 40, one of 400 g at 17."""
    sold = block(read(written["mixed, used"])["Yarn"], "Skeins and their prices")
    headings = ("g a skein", "m a skein", "skeins a pack", "price of a pack", "price of a gram")
    assert [[line[heading] for heading in headings] for line in sold] == [
        [100, 200, 1, 4.6, pytest.approx(0.046)],
        [100, 200, 10, 40, pytest.approx(0.04)],
        [400, 800, 1, 17, pytest.approx(0.0425)],
    ]


@pytest.mark.parametrize("name", ["plain", "inches", "mixed, used"])
def test_the_yarn_of_each_stitch_is_how_many_by_how_much_each_takes(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote, sheet = all_quotes[name], read(written[name])["Yarn"]
    inches = quote.workshop.units is Units.INCHES
    short, long, each, together = (2.54, YARDS, "in", "yd") if inches else (1, 1, "cm", "m")
    expected = [
        (colour.colour, count, pytest.approx(gauge.yarn_m * 100 / short))
        for colour in quote.estimate.colours
        for stitch, count in colour.yarn.counts.items()
        for gauge in [quote.plan.gauges[stitch.made(colour.source.yarn)]]
    ]
    lines = block(sheet, "The yarn in the stitches")
    headings = ("colour", "how many", f"{each} each")
    assert [tuple(line[heading] for heading in headings) for line in lines] == expected
    for line in lines:
        metres = line["how many"] * line[f"{each} each"] * short / 100
        assert line[together] == pytest.approx(metres / long)


@pytest.mark.parametrize("name", ["plain", "inches", "mixed, used", "guessed hours"])
def test_the_yarn_of_a_stitch_stands_once_whatever_the_number_of_its_colours(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    quote, sheet = all_quotes[name], read(written[name])["Yarn"]
    each = "in each" if quote.workshop.units is Units.INCHES else "cm each"
    short = 2.54 if quote.workshop.units is Units.INCHES else 1
    every = [(c.source.yarn, s) for c in quote.estimate.colours for s in c.yarn.counts]
    kinds = dict.fromkeys(every)
    gauges = [(yarn, quote.plan.gauges[stitch.made(yarn)]) for yarn, stitch in kinds]
    headings = ("yarn", each, "how sure", "swatch off by", "guess within")
    found = block(sheet, "The yarn in one stitch")
    lines = [tuple(line[heading] for heading in headings) for line in found]
    assert lines == [
        (
            yarn,
            pytest.approx(gauge.yarn_m * 100 / short),
            sureness_words(gauge.sureness),
            pytest.approx(gauge.basis_error),
            gauge.guess_limits,
        )
        for yarn, gauge in gauges
    ]
    assert len({(line["yarn"], line["stitch"]) for line in found}) == len(kinds)


# -- where balls are used up ---------------------------------------------------------------------


def told(quote: Quote, point: Point | None) -> str:
    return "it lasts" if point is None else point_words(point, quote.plan)


def short_balls(metres: float) -> Quote:
    ball = PutUp(weight_g=metres / 2, length_m=metres, price=sample_yarn().put_ups[0].price)
    return sample_quote(None, sample_workshop(yarns=(sample_yarn(put_ups=(ball,), stock=()),)))


@pytest.mark.parametrize("metres", [90, 150])
def test_every_ball_that_is_used_up_is_told_with_its_soonest_and_latest_row(
    metres: float,
) -> None:
    quote = short_balls(metres)
    lines = block(read(workbook_bytes(quote))["Yarn"], "Where skeins are used up")
    expected = [
        (colour.colour, str(number), *(told(quote, p) for p in (e.expected, e.soonest, e.latest)))
        for colour in quote.estimate.colours
        for number, e in enumerate(colour.ball_ends, 1)
        if e.expected is not None
    ]
    assert expected
    headings = ("colour", "skein", "expected", "soonest", "latest")
    assert [tuple(line[heading] for heading in headings) for line in lines] == expected
    assert all(line["soonest"] != line["latest"] for line in lines)


def test_a_ball_that_lasts_is_not_said_to_be_used_up() -> None:
    sheet = read(workbook_bytes(short_balls(9999)))["Yarn"]
    assert "Where skeins are used up" not in [cell.value for cell in sheet["A"]]
