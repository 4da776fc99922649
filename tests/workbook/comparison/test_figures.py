"""The workbook of a comparison, reckoned by another program, gives the figures of this one."""

from __future__ import annotations

import pytest
from openpyxl.workbook import Workbook

from quoting.core.ground.money import exact
from quoting.core.weighing.comparison import Comparison
from tests.workbook.comparison.figures import figures, shown
from tests.workbook.comparisons import Change, changes, comparisons
from tests.workbook.recalculation import differing, formula_cells, named

BY_YARN = ("deposit of the yarn", "deposit of the yarn and a share")
"""Changes that move no figure but the deposit and what it leaves."""

AT_HALF = "part payment at half"


@pytest.mark.parametrize("name", list(comparisons()))
def test_every_formula_comes_to_the_value_that_is_kept_beside_it(
    name: str, written: dict[str, bytes], reckoned_anew: dict[str, Workbook]
) -> None:
    assert len(list(formula_cells(written[name]))) > 60
    assert differing(written[name], reckoned_anew[name]) == {}


@pytest.mark.parametrize("name", list(comparisons()))
def test_the_sheets_figures_are_the_comparisons_to_the_cent(
    name: str, all_comparisons: dict[str, Comparison], reckoned_anew: dict[str, Workbook]
) -> None:
    expected = figures(all_comparisons[name])
    assert shown(reckoned_anew[name], len(expected)) == expected


@pytest.mark.parametrize("name", list(changes()))
def test_a_changed_input_gives_what_the_program_gives_for_it(
    name: str, all_changes: dict[str, Change], reckoned_anew: dict[str, Workbook]
) -> None:
    expected = figures(all_changes[name].expected)
    assert shown(reckoned_anew[f"changed {name}"], len(expected)) == expected


@pytest.mark.parametrize("name", [name for name in changes() if name not in BY_YARN])
def test_each_change_moves_some_figure(
    name: str, all_changes: dict[str, Change], all_comparisons: dict[str, Comparison]
) -> None:
    assert figures(all_changes[name].expected) != figures(all_comparisons["plain"])


def test_at_prices_the_size_that_earns_most_is_named_also_once_prices_are_typed(
    all_comparisons: dict[str, Comparison],
    all_changes: dict[str, Change],
    reckoned_anew: dict[str, Workbook],
) -> None:
    typed = {"changed to prices": all_changes["to prices"].expected}
    for name, found in {**all_comparisons, **typed}.items():
        if found.best is not None:
            assert named(reckoned_anew[name], "best") == str(found.sizes[found.best].size)
        else:
            assert str(named(reckoned_anew[name], "best")).startswith("none is named")


def test_what_each_price_pays_for_adds_up_to_it(
    all_comparisons: dict[str, Comparison], reckoned_anew: dict[str, Workbook]
) -> None:
    for name, book in reckoned_anew.items():
        checks = [cell.value for cell in book["Working"]["K"] if str(cell.value).startswith("add")]
        sizes = len(all_comparisons.get(name, all_comparisons["plain"]).sizes)
        assert len(checks) == sizes, name


def test_deposits_are_the_quotes(
    all_comparisons: dict[str, Comparison],
    all_changes: dict[str, Change],
    reckoned_anew: dict[str, Workbook],
) -> None:
    changed = {f"changed {name}": all_changes[name].expected for name in (*BY_YARN, AT_HALF)}
    for name, found in {**all_comparisons, **changed}.items():
        sheet = reckoned_anew[name]["Working"]
        title = next(cell.row for cell in sheet["A"] if cell.value == "What each sale comes to")
        paid = [
            tuple(exact(sheet[f"{column}{title + 2 + at}"].value) for column in "EFG")
            for at in range(len(found.sizes))
        ]
        prices = [some.quote.price for some in found.sizes]
        assert paid == [(p.deposit, p.balance, p.parts.at_half) for p in prices], name
