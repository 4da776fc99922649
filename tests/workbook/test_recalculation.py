"""The workbook, reckoned by another program, gives the figures of this one."""

from __future__ import annotations

from decimal import Decimal

import pytest
from openpyxl.workbook import Workbook

from quoting.core.ground.money import exact
from quoting.core.quote.quote import Quote
from tests.workbook.changes import Change, changes
from tests.workbook.constructions import DRAWN, SEWN
from tests.workbook.orders import quotes, surer, surer_quote
from tests.workbook.reading import block
from tests.workbook.recalculation import differing, formula_cells, named


def main_figures(quote: Quote) -> dict[str, Decimal]:
    """Return what a maker reads first, by the names of the cells that hold it."""
    price, hours = quote.price, quote.estimate.hours
    return {
        "cost": price.cost,
        "price": price.price,
        "tax": price.tax,
        "total": price.total,
        "fees": price.fees,
        "profit": price.profit,
        "margin_reached": price.margin,
        "earned_per_hour": price.earned_per_hour,
        "deposit": price.deposit,
        "balance": price.balance,
        "at_half": price.parts.at_half,
        "rest": price.parts.rest,
        "making_hours": hours.making,
        "office_hours": hours.office,
        "all_hours": hours.total,
        "fewest_hours": hours.low,
        "most_hours": hours.high,
    }


def shown(book: Workbook, figures: dict[str, Decimal]) -> dict[str, Decimal]:
    return {name: exact(named(book, name)) for name in figures}


@pytest.mark.parametrize("name", list(quotes()))
def test_every_formula_comes_to_the_value_that_is_kept_beside_it(
    name: str, written: dict[str, bytes], reckoned_anew: dict[str, Workbook]
) -> None:
    assert len(list(formula_cells(written[name]))) > 100
    assert differing(written[name], reckoned_anew[name]) == {}


@pytest.mark.parametrize("name", list(quotes()))
def test_the_sheets_figures_are_the_quotes_to_the_cent(
    name: str, all_quotes: dict[str, Quote], reckoned_anew: dict[str, Workbook]
) -> None:
    figures = main_figures(all_quotes[name])
    assert shown(reckoned_anew[name], figures) == figures
    assert named(reckoned_anew[name], "check") == "adds up to the total"


@pytest.mark.parametrize("name", list(changes()))
def test_a_changed_input_gives_what_the_program_gives_for_it(
    name: str, all_changes: dict[str, Change], reckoned_anew: dict[str, Workbook]
) -> None:
    figures = main_figures(all_changes[name].expected)
    assert shown(reckoned_anew[f"changed {name}"], figures) == figures


@pytest.mark.parametrize("name", list(changes()))
def test_each_change_moves_some_figure(
    name: str, all_changes: dict[str, Change], all_quotes: dict[str, Quote]
) -> None:
    change = all_changes[name]
    assert main_figures(change.expected) != main_figures(all_quotes[change.quote])


@pytest.mark.parametrize("name", ["euro", "euro, divided"])
def test_the_buyers_currency_follows_rate_and_cushion(
    name: str, all_quotes: dict[str, Quote], reckoned_anew: dict[str, Workbook]
) -> None:
    asked = all_quotes[name].price.buyer_total
    assert exact(named(reckoned_anew[name], "buyer_total")) == asked


@pytest.mark.parametrize(
    ("name", "before", "quote"),
    [
        ("surer of the yarn", "mixed, used", surer_quote()),
        ("surer of the squares", SEWN, surer(SEWN)),
        ("surer by chance", DRAWN, surer(DRAWN)),
    ],
)
def test_the_reserve_follows_tension_and_how_sure_the_yarn_should_be(
    name: str, before: str, quote: Quote, reckoned_anew: dict[str, Workbook]
) -> None:
    def reserves(name: str) -> dict[str, float]:
        lines = block(reckoned_anew[name]["Yarn"], "Yarn used of each colour")
        return {line["colour"]: line["reserve"] for line in lines if "yarn" in line}

    wanted = {one.colour: one.reserve for one in quote.estimate.colours}
    assert reserves(name) == pytest.approx(wanted)
    assert all(share < wanted[colour] for colour, share in reserves(before).items() if share)
