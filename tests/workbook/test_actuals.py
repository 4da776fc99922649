"""What it really took, typed in or filled in from the log, against sums by hand."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import Actuals, actuals_of, workbook_bytes
from exports.costing_workbook.actuals.actuals_sheet import FROM_LOG, TO_BE_FILLED_IN
from quoting.core.estimate.chores import Part
from quoting.core.ground.money import exact
from quoting.core.making.log_lines import Doing
from quoting.core.making.money_due import money_due
from quoting.core.making.outcome import Outcome, outcome_of
from quoting.core.quote.offer import offer_of
from tests.examples import sample_quote
from tests.workbook.reading import block, by
from tests.workbook.recalculation import differing, named, opened, recalculated, saved
from tests.workbook.test_recalculation import main_figures, shown

QUOTE = sample_quote()


KNOWN = Actuals(
    hours={Part.STITCHING: Decimal(12)}, grams={"oat": Decimal(205)}, yarn_cost=Decimal("46.60")
)
"""Twelve hours of stitching, 205 g of oat, and yarn for £46.60."""

ALL_KNOWN = Actuals(
    hours={part: Decimal("1.25") for part in Part},
    grams={colour.colour: Decimal("88.5") for colour in QUOTE.estimate.colours},
    paid=Decimal("280.00"),
    yarn_cost=Decimal("41.35"),
)
WRITTEN = {"known": workbook_bytes(QUOTE, KNOWN), "all known": workbook_bytes(QUOTE, ALL_KNOWN)}


@pytest.fixture(scope="module")
def anew(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Workbook]:
    """Return the workbooks reckoned anew, and one in which a maker has typed what is known."""
    book = opened(workbook_bytes(QUOTE))
    sheet = book["Actuals"]
    rows = [(cell.value, cell.row) for cell in sheet["A"]]
    for label, really in (("Stitching", 12), ("oat", 205), ("Yarn", 46.6)):
        row = next(row for name, row in rows if name == label)
        sheet[f"C{row}"].value = really
    return recalculated({**WRITTEN, "typed": saved(book)}, tmp_path_factory.mktemp("actuals"))


@pytest.fixture(scope="module")
def filled(anew: dict[str, Workbook]) -> Workbook:
    """Return the workbook in which what is known was typed."""
    return anew["typed"]


@pytest.mark.parametrize("name", WRITTEN)
def test_what_is_filled_in_comes_to_what_is_kept_beside_it(
    name: str, anew: dict[str, Workbook]
) -> None:
    assert differing(WRITTEN[name], anew[name]) == {}
    assert named(anew[name], "really_earned")


def test_what_is_filled_in_is_as_if_it_had_been_typed(anew: dict[str, Workbook]) -> None:
    typed, known = (
        [[cell.value for cell in row] for row in anew[name]["Actuals"].iter_rows()]
        for name in ("typed", "known")
    )
    other = [both for both in zip(typed, known, strict=True) if both[0] != both[1]]
    assert [row[0] for row, _ in other] == [TO_BE_FILLED_IN]
    assert [row[0] for _, row in other] == [FROM_LOG]


def test_an_empty_one_says_what_was_estimated() -> None:
    book = opened(workbook_bytes(QUOTE), values=True)
    money = by(block(book["Actuals"], "What it came to"), "A")
    assert exact(money["An hour earned"]["estimated"]) == QUOTE.price.earned_per_hour
    assert not named(book, "really_earned")
    hours = by(block(book["Actuals"], "Hours"), "A")
    assert exact(hours["All hours"]["estimated"]) == QUOTE.estimate.hours.total
    assert "really" not in hours["All hours"]


def test_hours_and_grams_stand_beside_what_was_estimated(filled: Workbook) -> None:
    hours = by(block(filled["Actuals"], "Hours"), "A")
    assert hours["Stitching"]["difference"] == pytest.approx(12 - 9.44)
    assert hours["Stitching"]["of the estimate"] == pytest.approx(12 / 9.44 - 1)
    assert hours["All hours"]["really"] == pytest.approx(13.04 - 9.44 + 12), "the rest as estimated"
    oat = by(block(filled["Actuals"], "Yarn, g"), "A")["oat"]
    assert oat["difference"] == pytest.approx(205 - oat["estimated"])


def test_the_real_pace_and_the_real_yarn_of_a_stitch_follow(filled: Workbook) -> None:
    """205 g of 2 m each, less what is carried, in tails and in extras, over the stitches."""
    stitches = sum(sum(c.yarn.counts.values()) for c in QUOTE.estimate.colours)
    paces = by(block(filled["Actuals"], "Hours"), "A")
    each = paces["Minutes a stitch, frogging with it"]
    assert each["really"] == pytest.approx(12 * 60 / stitches)
    oat = next(c for c in QUOTE.estimate.colours if c.colour == "oat")
    other = oat.metres - oat.yarn.stitches_m
    cm = 100 * (205 * 2 - other) / sum(oat.yarn.counts.values())
    line = by(block(filled["Actuals"], "Yarn in a stitch, cm"), "A")["oat"]
    assert line["really"] == pytest.approx(cm)


def test_an_hour_really_earned_what_is_left_over_the_hours_it_took(filled: Workbook) -> None:
    """By hand: 297 less fees 4.86, yarn 46.60, box and wrapping and post, overhead 15.60 × 1.80."""
    price = QUOTE.price
    money = by(block(filled["Actuals"], "What it came to"), "A")
    others = [exact(money[name]["estimated"]) for name in ("Extras", "Packaging and delivery")]
    left = Decimal(297) - price.fees - Decimal("46.60") - sum(others) - Decimal("28.08")
    assert exact(named(filled, "really_earned")) == round(left / Decimal("15.60"), 2)
    assert shown(filled, main_figures(QUOTE)) == main_figures(QUOTE), "the costing stays as it was"


def took(hours: str) -> Outcome:
    """Return what an order took at the hook, all of its yarn as expected."""
    outcome = outcome_of(QUOTE, ())
    work = tuple(
        replace(part, took=Decimal(hours)) if part.doing is Doing.AT_THE_HOOK else part
        for part in outcome.work
    )
    return replace(outcome, work=work)


UNPAID = money_due(offer_of(QUOTE), ())


@pytest.mark.parametrize("hours", ["14.25", "9.00", "0.35", "0.00"])
def test_what_no_clock_tells_apart_is_as_estimated_and_stitching_the_rest(hours: str) -> None:
    known = actuals_of(QUOTE, took(hours), UNPAID).hours
    assert sum(known.values()) == Decimal(hours)
    assert min(known.values()) >= 0
    assert set(known) == set(Doing.AT_THE_HOOK.parts)
    if Decimal(hours) > 1:
        assert known[Part.TURNING] == QUOTE.estimate.hours.of(Part.TURNING)


def test_what_was_not_told_is_left_to_be_filled_in() -> None:
    known = actuals_of(QUOTE, outcome_of(QUOTE, ()), UNPAID)
    assert known == Actuals()


def test_what_was_paid_is_known_once_all_of_it_is() -> None:
    total = QUOTE.price.total
    part, whole = (replace(UNPAID, received=amount) for amount in (total - 1, total))
    assert actuals_of(QUOTE, took("9"), part).paid is None
    assert actuals_of(QUOTE, took("9"), whole).paid == total
