"""The workbook of a comparison, reckoned by another program, gives the figures of this one."""

from __future__ import annotations

import io
import subprocess
import sys
from collections.abc import Mapping
from decimal import Decimal
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from quoting.core.comparison import Comparison, Rule
from quoting.core.money import exact
from quoting.wording import refusal_words, speech_of, verdict
from tests.examples import sample_design, sample_order, sample_workshop
from tests.workbook.comparisons import (
    BED,
    COT,
    DOLL,
    PRAM,
    Change,
    changes,
    compared,
    comparisons,
)
from tests.workbook.recalculation import named, opened, place_of, recalculated
from tests.workbook.test_recalculation import formula_cells, same

SHORT = "In short"
RULES = "What an hour would earn by the trade's rules of thumb"
INPUTS = "What you put in for each size"
HEADING_ROWS = 2


@pytest.fixture(scope="module")
def all_comparisons() -> dict[str, Comparison]:
    return comparisons()


@pytest.fixture(scope="module")
def all_changes() -> dict[str, Change]:
    return changes()


@pytest.fixture(scope="module")
def written(all_comparisons: dict[str, Comparison]) -> dict[str, bytes]:
    return {name: comparison_bytes(found) for name, found in all_comparisons.items()}


@pytest.fixture(scope="module")
def reckoned_anew(
    written: dict[str, bytes],
    all_changes: dict[str, Change],
    tmp_path_factory: pytest.TempPathFactory,
) -> dict[str, Workbook]:
    altered = {
        f"changed {name}": _altered(written["plain"], change)
        for name, change in all_changes.items()
    }
    return recalculated({**written, **altered}, tmp_path_factory.mktemp("office"))


def _altered(content: bytes, change: Change) -> bytes:
    """Return the workbook with some inputs set anew, and without any kept value of a formula."""
    book = opened(content)
    for name, value in change.inputs.items():
        _set(book, name, value)
    first = row_under(book, INPUTS)
    for letter, values in change.columns.items():
        for at, each in enumerate(values):
            book["Sizes"][f"{letter}{first + at}"].value = each
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _set(book: Workbook, name: str, value: Any) -> None:
    if name == "fee":
        row = next(cell.row for cell in book["Terms"]["A"] if cell.value == "Card payment")
        for letter, part in zip("EFB", value, strict=True):
            book["Terms"][f"{letter}{row}"].value = part
        return
    sheet, address = place_of(book, name)
    book[sheet][address].value = value


def row_under(book: Workbook, title: str) -> int:
    """Return the first row of figures of a block of the sheet of sizes."""
    rows: list[int] = [cell.row for cell in book["Sizes"]["A"] if cell.value == title]
    assert len(rows) == 1
    return rows[0] + HEADING_ROWS


def figures(comparison: Comparison) -> list[list[Decimal | None]]:
    """Return what the answers say of each size, and of the rules of thumb for it."""
    found: list[list[Decimal | None]] = []
    for some in comparison.sizes:
        price, ruled = some.quote.price, {each.rule: each for each in some.rules}
        assert len(ruled) == len(Rule)
        found.append(
            [
                some.quote.estimate.hours.total,
                price.cost,
                price.each,
                price.total,
                price.profit,
                price.margin,
                price.earned_per_hour,
                some.quote.workshop.pay.making_per_hour,
                some.price_per_100_cm2,
                *(
                    figure
                    for rule in Rule
                    for figure in (ruled[rule].price, ruled[rule].earned_per_hour)
                ),
            ]
        )
    return found


def shown(book: Workbook, sizes: int) -> list[list[Decimal | None]]:
    """Return the same figures as a workbook shows them."""
    sheet, short, rules = book["Sizes"], row_under(book, SHORT), row_under(book, RULES)
    cells = [
        [sheet[f"{letter}{first + at}"].value for first, letter in columns(short, rules)]
        for at in range(sizes)
    ]
    return [[None if value is None else exact(value) for value in row] for row in cells]


def columns(short: int, rules: int) -> list[tuple[int, str]]:
    return [*((short, letter) for letter in "BCDEFGHIJ"), *((rules, x) for x in "BCDEFG")]


@pytest.mark.parametrize("name", list(comparisons()))
def test_every_formula_comes_to_the_value_that_is_kept_beside_it(
    name: str, written: dict[str, bytes], reckoned_anew: dict[str, Workbook]
) -> None:
    kept, anew = opened(written[name], values=True), reckoned_anew[name]
    cells = list(formula_cells(written[name]))
    assert len(cells) > 60
    differing = {
        (sheet, at): (kept[sheet][at].value, anew[sheet][at].value)
        for sheet, at in cells
        if not same(kept[sheet][at].value, anew[sheet][at].value)
    }
    assert differing == {}


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


@pytest.mark.parametrize("name", [name for name in changes() if name != "deposit of the yarn"])
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
    by_yarn = {"changed deposit of the yarn": all_changes["deposit of the yarn"].expected}
    for name, found in {**all_comparisons, **by_yarn}.items():
        sheet = reckoned_anew[name]["Working"]
        title = next(cell.row for cell in sheet["A"] if cell.value == "What each sale comes to")
        paid = [
            (exact(sheet[f"E{title + 2 + at}"].value), exact(sheet[f"F{title + 2 + at}"].value))
            for at in range(len(found.sizes))
        ]
        prices = [some.quote.price for some in found.sizes]
        assert paid == [(price.deposit, price.balance) for price in prices], name


def texts_of(book: Workbook, sheet: str) -> list[str]:
    return [str(cell.value) for row in book[sheet].iter_rows() for cell in row if cell.value]


def test_the_notes_say_what_is_left_out_and_why_and_which_size_pays(
    all_comparisons: dict[str, Comparison], written: dict[str, bytes]
) -> None:
    found = all_comparisons["eight at prices"]
    speech = speech_of(found.sizes[0].quote.workshop)
    said = texts_of(opened(written["eight at prices"]), "Notes")
    assert verdict(found, speech) in said
    assert [r.size for r in found.refused] == [DOLL]
    assert f"3x3cm: {refusal_words(found.refused[0], speech)}" in said


def test_a_caution_of_some_sizes_names_them_and_one_of_all_is_said_once() -> None:
    poor = compared(PRAM, BED, prices={PRAM: "90", BED: "900"})
    said = texts_of(opened(comparison_bytes(poor)), "Notes")
    wages = [text for text in said if "less than the £14.00" in text]
    assert len(wages) == 1
    assert wages[0].startswith("60x75cm: ")
    assert len([text for text in said if "Take short breaks" in text]) == 1


@pytest.mark.parametrize("own_size", [COT, DOLL])
def test_where_no_size_can_be_made_the_workbook_says_so_and_why(own_size: Any) -> None:
    design = sample_design(width_cm=own_size.width_cm, height_cm=own_size.height_cm)
    book = opened(comparison_bytes(compared(DOLL, order=sample_order(design=design))))
    assert book.sheetnames == ["Sizes", "Notes"]
    assert "None of these sizes can be made." in texts_of(book, "Sizes")
    assert any(text.startswith("3x3cm: ") for text in texts_of(book, "Notes"))


def test_a_text_of_the_order_or_a_size_is_never_a_formula() -> None:
    order = sample_order(title='=HYPERLINK("A1")', notes="@SUM(A1)")
    shop = sample_workshop()
    book = opened(
        comparison_bytes(compared(replace_label(PRAM, "=1+1"), order=order, workshop=shop))
    )
    for text in ('=HYPERLINK("A1")', "=1+1", "@SUM(A1)"):
        cells = [
            cell
            for sheet in book
            for row in sheet.iter_rows()
            for cell in row
            if cell.value == text
        ]
        assert cells, text
        assert all(cell.data_type == "s" and cell.quotePrefix for cell in cells), text


def replace_label(size: Any, label: str) -> Any:
    return type(size)(width_cm=size.width_cm, height_cm=size.height_cm, label=label)


def kept_by_charts(book: Workbook) -> list[tuple[Any, list[Any]]]:
    """Return, for every series of every chart, the cells it draws and the values kept in it."""
    found: list[tuple[Any, list[Any]]] = []
    for chart in book["Sizes"]._charts:
        for part in chart._charts:
            for series in part.series:
                numbers, names, title = series.val.numRef, series.cat.strRef, series.tx.strRef
                found.append((numbers.f, [float(point.v) for point in numbers.numCache.pt]))
                found.append((names.f, [point.v for point in names.strCache.pt]))
                found.append((title.f, [point.v for point in title.strCache.pt]))
    return found


@pytest.mark.parametrize("name", ["plain", "one size", "eight at prices", "yen"])
def test_two_charts_keep_the_values_that_their_cells_show(
    name: str, written: dict[str, bytes]
) -> None:
    book = opened(written[name], values=True)
    assert len(book["Sizes"]._charts) == 2
    kept = kept_by_charts(opened(written[name]))
    assert len(kept) == 3 * (9 + 2)
    for place, values in kept:
        sheet, span = place.replace("$", "").split("!")
        first, last = span.split(":")
        cells = [row[0].value for row in book[sheet][f"{first}:{last}"]]
        assert cells == values, place


def test_the_same_comparison_gives_the_same_bytes(
    all_comparisons: dict[str, Comparison], written: Mapping[str, bytes]
) -> None:
    assert comparison_bytes(all_comparisons["yen"]) == written["yen"]


def test_fifty_sizes_have_their_rows_and_charts() -> None:
    plain = compared(PRAM)
    many = Comparison(sizes=plain.sizes * 50, refused=(), base=plain.base)
    book = opened(comparison_bytes(many), values=True)
    first = row_under(book, SHORT)
    assert book["Sizes"][f"A{first + 49}"].value == "60x75cm"
    assert len(book["Sizes"]._charts) == 2


def test_the_spreadsheet_library_is_loaded_only_when_a_workbook_is_written() -> None:
    code = "import sys, exports.comparison_workbook; sys.exit('openpyxl' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
