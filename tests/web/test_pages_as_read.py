"""The pages that show the workshop, each figure beside its name; and the frame of every page."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.ground.measures import Units
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.selling import Deposit, RestDue
from tests.examples import (
    sample_workshop,
    sample_yarn,
)
from tests.web.conftest import maker_in
from tests.web.pages import Node, Page
from tests.web.rich_workshop import rich


def facts(node: Node) -> dict[str, str]:
    """Return what stands beside each name."""
    pairs = [list(div.all(lambda n: n.tag in {"dt", "dd"})) for div in node.all("div")]
    return {pair[0].text: pair[1].text for pair in pairs if len(pair) == 2}


def cards(page: Page) -> list[Node]:
    return list(page.root.all(lambda n: n.attributes.get("class") == "card"))


# -- measurements ----------------------------------------------------------------------------------


def test_a_swatch_shows_what_was_read_and_what_one_stitch_takes() -> None:
    weighed, run, *_ = cards(maker_in(rich()).open("/measurements"))
    assert next(weighed.all("h3")).text == "hdc in moor aran, 5 mm hook"
    shown = facts(weighed)
    assert shown["Read in the middle"] == "16 stitches over 12.8 cm, 12 rows over 11.4 cm"
    assert shown["Weighed"] == "24 stitches by 20 rows: 25 g, on a scale that shows 1 g"
    assert shown["One stitch"].startswith("0.8 cm wide, 0.95 cm high, ")
    assert shown["Ten centimetres"] == "12.5 stitches, 10.5 rows"
    assert shown["Before washing"] == "17 stitches over 12.5 cm, 13 rows over 11.5 cm"
    assert shown["How sure"].startswith("measured; ")
    assert next(run.all("h3")).text == "sc in moor aran, 4.5 mm hook"
    shown = facts(run)
    # 312.5 cm in fifty stitches are 6.25 cm in one
    assert shown["Unravelled"] == "50 stitches: 312.5 cm of yarn"
    assert shown["One stitch"].endswith("6.25 cm of yarn")
    assert "Before washing" not in shown
    assert "Weighed" not in shown


def test_in_inches_a_swatch_is_told_over_four_of_them() -> None:
    """10.16 cm by 0.8 and 0.95 cm: 12.7 stitches and 10.7 rows (NIST Handbook 44, appendix C)."""
    (swatch,) = cards(maker_in(sample_workshop(units=Units.INCHES)).open("/measurements"))
    assert facts(swatch)["Four inches"] == "12.7 stitches, 10.7 rows"


def test_the_pace_of_each_stitch_stands_under_its_headings() -> None:
    head, *rows = maker_in(rich()).open("/measurements").table("Stitches a minute")
    shown = [dict(zip(head, row, strict=True)) for row in rows]
    assert [line["Stitch"] for line in shown] == ["hdc", "sc"]
    assert [line["Sessions"] for line in shown] == ["1", "2"]
    assert [line["Stitches counted"] for line in shown] == ["500", "720"]
    assert [line["How sure"] for line in shown] == ["timed once", "measured"]
    # 500 in 25 and 720 in 29.5 minutes
    assert [line["Stitches a minute"] for line in shown] == ["20.0", "24.4"]


def test_other_minutes_are_the_mean_of_their_readings() -> None:
    head, *rows = maker_in(rich()).open("/measurements").table("For one of each")
    assert head == ["For one of each", "Minutes", "Readings"]
    shown = {row[0]: row[1:] for row in rows}
    assert shown["Turning a row"] == ["0.2", "3"]
    assert shown["Packing"] == ["14", "1"]
    assert shown["Weaving in an end"] == ["2.5", "1"]


def test_ripping_back_is_a_share_of_the_stitching() -> None:
    assert "Frogging: 6% of" in maker_in(rich()).open("/measurements").root.text


def test_without_a_swatch_the_page_says_what_that_means() -> None:
    text = maker_in(sample_workshop(swatches=())).open("/measurements").root.text
    assert "nothing is measured yet" in text
    assert "nothing is measured yet" not in maker_in(rich()).open("/measurements").root.text


# -- yarn ------------------------------------------------------------------------------------------


def test_a_yarn_shows_its_fibre_category_weight_and_hooks() -> None:
    """Category and length are told as shops do; hooks by the Craft Yarn Council (2018)."""
    wool, soft = cards(maker_in(rich()).open("/yarn"))
    assert (
        "100 % wool, aran, worsted / medium (4), 200 m to 100 g; hooks usual for it: 5.5 to 6.5 mm"
        in wool.text
    )
    assert "sport, 5 ply / fine (2), 200 m to 100 g; hooks usual for it: 3.5 to 4.5 mm" in soft.text
    assert "wool" not in soft.text


def test_how_a_yarn_is_sold_stands_under_its_headings() -> None:
    """Of three balls of 800 m at 17.00 together a metre costs 0.00708."""
    head, *rows = maker_in(rich()).open("/yarn").table("Skein")
    assert head == ["Skein", "Length", "In a pack", "Price", "For 1 m"]
    assert [row[:4] for row in rows] == [
        ["100 g", "200 m", "1", "£4.60"],
        ["400 g", "800 m", "3", "£17.00"],
    ]
    assert rows[0][4] == "£0.023"
    assert rows[1][4].startswith("£0.007")


def test_what_is_on_the_shelf_is_told_with_its_colour_its_length_and_its_lot() -> None:
    wool, soft = cards(maker_in(rich()).open("/yarn"))
    (ball,) = (item.text for item in wool.all("li") if "dye lot" in item.text)
    assert ball == "oat: 60 g, about 120 m, dye lot 771"
    assert "On the shelf" not in soft.text
    colours = next(n for n in wool.all("ul") if n.attributes.get("class") == "swatches")
    dots = [c.attributes["fill"] for c in colours.all("circle")]
    assert dots == list(sample_yarn().colours.values())


# -- workshop --------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def workshop_page() -> Page:
    return maker_in(rich()).open("/workshop")


def test_pay_price_deposit_and_tax_stand_beside_their_names(workshop_page: Page) -> None:
    money, *_ = cards(workshop_page)
    shown = facts(money)
    assert shown["Rest"].startswith("12% ")
    del shown["Rest"]
    assert shown == {
        "Making": "£14.00 an hour",
        "Admin": "£11.50 an hour",
        "Overhead": "£1.80 an hour",
        "Price by": "a markup of 25%",
        "Rounded up to": "£2.50",
        "Minimum charge": "£60.00",
        "Yarn charged": "grams used",
        "Quote valid": "17 days",
        "Deposit": "30% of the total",
        "When half is made": "nothing",
        "The rest is due": "before it is sent",
        "Tax": "20%, added",
    }


def test_a_deposit_of_the_yarn_and_a_share_and_what_follows_it_stand_beside_their_names() -> None:
    pricing = replace(
        sample_workshop().pricing,
        deposit=Deposit(yarn=True, share=0.3),
        at_half=0.25,
        rest_due=RestDue.ON_DELIVERY,
    )
    money, *_ = cards(maker_in(sample_workshop(pricing=pricing)).open("/workshop"))
    shown = facts(money)
    assert shown["Deposit"] == "the yarn and 30% of the rest"
    assert shown["When half is made"] == "25% of the total"
    assert shown["The rest is due"] == "on delivery"


def test_fees_and_delivery_are_told_one_by_one(workshop_page: Page) -> None:
    money, *_ = cards(workshop_page)
    assert [item.text for item in money.all("li")] == [
        "Card payment: 1.5% on the total, and £0.20 for each payment",
        "Market stall: 6.5% on the price",
        "Charged £5.00, paid £4.45, packaging £1.10",
        "To GB, up to 2,000 g: charged £5.00, paid £4.45",
    ]


def test_how_the_work_goes_stands_beside_its_names(workshop_page: Page) -> None:
    _, work, *_ = cards(workshop_page)
    shown = facts(work)
    assert shown["At the hook"] == "12 hours a week"
    assert shown["Carried up"] == "over at most 3 rows, 4.5 cm"
    assert shown["Between rounds"] == "cut, for it would show"
    assert shown["Tails"] == "12 cm each"
    assert shown["Tail for a fringe"] == "25 cm"
    assert shown["New skein joined"] == "at an edge"
    assert shown["Yarn in reserve"] == "90% sure that it is enough"
    assert shown["Allowance for uneven gauge"] == "4%"
    assert shown["Yarn arrives"] == "in 5 days"
    assert shown["Drying and delivery"] == "5 days"
    assert shown["Hours promised elsewhere"] == "7.5"
    assert shown["Days off"] == "24 December 2026, 25 December 2026"
    assert "moss stitch: like sc, multiple of 2 + 1" in work.text


def test_what_a_workshop_has_not_is_said_to_be_none() -> None:
    plain = sample_workshop()
    bare = sample_workshop(
        fees=(),
        pricing=replace(plain.pricing, minimum=None, round_up_to=None, deposit=None),
        calendar=replace(plain.calendar, days_off=()),
        habits=Habits(allowance=0.1),
    )
    money, work, *_ = cards(maker_in(bare).open("/workshop"))
    shown = facts(money) | facts(work)
    assert shown["Minimum charge"] == shown["Deposit"] == shown["Days off"] == "none"
    assert shown["Rounded up to"] == "the smallest coin"
    assert shown["Tax"] == "not registered"
    assert shown["Yarn in reserve"] == "10%"
    assert shown["Yarn charged"] == "whole skeins bought"
    assert "none" in [item.text for item in money.all("li")]


def test_rates_in_use_stand_under_their_headings(workshop_page: Page) -> None:
    head, *rows = workshop_page.table("Cushion")
    assert (head[0], *head[2:]) == ("Currency", "Cushion", "Of", "From")
    ((code, rate, *rest),) = rows
    assert "1.17" in rate
    assert (code, *rest) == ("EUR", "2%", "25 November 2026", "typed")
