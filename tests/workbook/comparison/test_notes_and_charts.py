"""What the workbook of a comparison says and draws beside its figures."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Mapping
from typing import Any

import pytest
from openpyxl.workbook import Workbook

from exports.comparison_workbook import comparison_bytes
from quoting.core.weighing.comparison import Comparison
from quoting.core.workshop.rounds import Counting
from quoting.wording import refusal_words, speech_of, verdict
from tests.examples import sample_design, sample_order, sample_workshop
from tests.motif_examples import centre_order, motif_workshop, sample_centre
from tests.workbook.comparison.blocks import SHORT, row_under
from tests.workbook.comparisons import BED, COT, DOLL, PRAM, compared
from tests.workbook.recalculation import opened


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


def test_every_sheet_says_on_top_how_the_checks_stand(written: dict[str, bytes]) -> None:
    book = opened(written["plain"], values=True)
    for sheet in book.sheetnames:
        assert "All checks are well." in [cell.value for cell in book[sheet]["A"][:3]], sheet


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
    assert book["Sizes"][f"A{first + 49}"].value == "60x75cm (50)"
    assert len(book["Sizes"]._charts) == 2


def test_the_spreadsheet_library_is_loaded_only_when_a_workbook_is_written() -> None:
    code = "import sys, exports.comparison_workbook; sys.exit('openpyxl' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


@pytest.mark.parametrize("shape", list(Counting))
def test_that_the_width_alone_counts_is_said_on_the_first_sheet_of_what_goes_by_it(
    shape: Counting,
) -> None:
    order = centre_order(body=sample_centre("teal", "rust", counting=shape))
    found = compared(PRAM, COT, order=order, workshop=motif_workshop())
    said = " ".join(texts_of(opened(comparison_bytes(found)), "Sizes"))
    note = f"A {shape.value} goes by its width"
    assert said.count(note) == shape.goes_by_width
