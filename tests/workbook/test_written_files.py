"""What stands in the parts of a workbook's file, and how a spreadsheet program reads it."""

from __future__ import annotations

import io
import re
import subprocess
import zipfile
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
import time_machine
from openpyxl import Workbook
from openpyxl.utils.escape import unescape

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import Cell, Formula, Look, words, yours
from exports.sheets.grid import Grid
from exports.sheets.paper import set_up
from exports.sheets.saving import saved_bytes
from exports.sheets.xml_text import uncoded
from quoting.core.order.order import Extra
from quoting.wording import Speech, sheet_money
from tests.examples import TODAY, sample_order, sample_quote
from tests.programs import require_program
from tests.workbook.comparisons import COT, PRAM, compared
from tests.workbook.recalculation import opened

CODED = ["_x003D_", "a _x005F_ b", "_x003d_x003D_", "_X003D_", "_x03D_", "__x0041__"]


def part(content: bytes, name: str) -> str:
    return zipfile.ZipFile(io.BytesIO(content)).read(name).decode()


def one_sheet(*cells: Cell, language: str = "") -> bytes:
    """Return a workbook of one sheet with these cells under one another."""
    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.language = language or None
    grid = Grid(book, "Page", (40,))
    for cell in cells:
        grid.line(cell)
    return saved_bytes(book, {grid.title: grid.cached}, TODAY)


def shown(content: bytes, folder: Path) -> list[str]:
    """Return the first column of the first sheet as LibreOffice shows it."""
    program = require_program("soffice", "libreoffice")
    (folder / "page.xlsx").write_bytes(content)
    profile = (folder / "profile").as_uri()
    command = [program, f"-env:UserInstallation={profile}", "--headless", "--convert-to", "html"]
    subprocess.run(
        [*command, "--outdir", str(folder), str(folder / "page.xlsx")],
        check=True,
        capture_output=True,
        timeout=120,
    )
    page = (folder / "page.html").read_text(encoding="utf-8")
    cells = re.findall(r"<td.*?</td>", page, re.DOTALL)
    return [re.sub(r"<[^>]*>|\s*\n\s*", "", cell) for cell in cells]


@pytest.mark.parametrize("text", CODED)
def test_what_looks_like_the_code_of_a_character_is_read_as_it_was_typed(text: str) -> None:
    """ECMA-376, part 1, 22.9.2.19: `_xHHHH_` stands for a character, `_x005F_` for a low line."""
    assert unescape(uncoded(text)) == text


def test_a_text_without_a_code_is_left_as_it_is() -> None:
    for text in ("_x03D_", "x003D", "_X003D_", "plain_x", "_x00GG_"):
        assert uncoded(text) == text


@pytest.mark.slow
def test_a_spreadsheet_program_shows_such_texts_as_they_were_typed(tmp_path: Path) -> None:
    assert shown(one_sheet(*map(words, CODED)), tmp_path) == CODED


def test_the_text_that_a_formula_comes_to_is_coded_as_well() -> None:
    content = one_sheet(Cell(Formula('"_x003D"&"_"', "_x003D_ & \0"), Look.PLAIN))
    kept = "<v>_x005F_x003D_ &amp; </v>"
    assert kept in part(content, "xl/worksheets/sheet1.xml")


def test_a_text_of_an_order_is_coded_in_cells_and_charts() -> None:
    order = replace(sample_order(), title="_x003D_", extras=(Extra(what="_x0041_ <b>"),))
    content = workbook_bytes(sample_quote(order))
    summary, costing = (part(content, f"xl/worksheets/sheet{number}.xml") for number in (1, 2))
    assert "_x005F_x003D_" in summary
    assert "_x005F_x0041_ &lt;b&gt;" in costing
    labelled = type(PRAM)(width_cm=60, height_cm=75, label="_x003D_")
    sizes = comparison_bytes(compared(labelled, COT))
    assert ">_x005F_x003D_<" in part(sizes, "xl/charts/chart1.xml").replace("c:", "")
    assert ' descr="A column for each size' in part(sizes, "xl/drawings/drawing1.xml")


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "\tx"])
def test_a_text_like_a_formula_is_written_as_a_text(text: str) -> None:
    sheet = part(one_sheet(words(text)), "xl/worksheets/sheet1.xml")
    assert f'<is><t xml:space="preserve">{text}</t></is>' in sheet
    assert "<f>" not in sheet


def test_an_empty_text_has_a_style_and_no_content() -> None:
    content = one_sheet(words("", Look.HEADING))
    assert re.search(r'<c r="A1" s="\d+"/>', part(content, "xl/worksheets/sheet1.xml"))
    assert opened(content)["Page"]["A1"].border.bottom.style == "thin"


def test_no_cell_of_a_workbook_holds_an_empty_text() -> None:
    for content in (workbook_bytes(sample_quote()), comparison_bytes(compared(PRAM, COT))):
        for name in zipfile.ZipFile(io.BytesIO(content)).namelist():
            if name.startswith("xl/worksheets/sheet"):
                assert '"inlineStr"/>' not in part(content, name)
                assert "></t>" not in part(content, name)


def test_figures_days_and_answers_come_back_as_they_were() -> None:
    day, figure = date(2027, 3, 20), 0.1 + 0.2
    content = one_sheet(
        yours(figure),
        yours(Decimal("12.340")),
        Cell(day, Look.INPUT, "yyyy-mm-dd"),  # type: ignore[arg-type]
        Cell(Formula("1=1", True), Look.PLAIN),  # noqa: FBT003
        Cell(Formula('"a"&" b"', "a b"), Look.PLAIN),
    )
    sheet = opened(content, values=True)["Page"]
    values = [sheet[f"A{row}"].value for row in range(1, 6)]
    assert values[:2] == [figure, 12.34]
    assert values[2].date() == day
    assert values[3:] == [True, "a b"]
    assert opened(content)["Page"]["A5"].value == '="a"&" b"'


def test_the_same_workbook_gives_the_same_bytes_whatever_the_clock_says() -> None:
    quote = sample_quote()
    with time_machine.travel("1999-12-31T23:59:58Z", tick=False):
        then = workbook_bytes(quote)
    with time_machine.travel("2150-01-02T03:04:05Z", tick=False):
        assert workbook_bytes(quote) == then
    stamps = {info.date_time[:3] for info in zipfile.ZipFile(io.BytesIO(then)).infolist()}
    assert stamps == {(quote.day.year, quote.day.month, quote.day.day)}
    assert part(then, "docProps/core.xml").count(f"{quote.day}T00:00:00Z") == 2


AMOUNTS = {
    "99999.99": "₹99,999.99",
    "99999.996": "₹1,00,000.00",
    "1234567.89": "₹12,34,567.89",
    "9999999.99": "₹99,99,999.99",
    "123456789.12": "₹12,34,56,789.12",
    "0": "₹0.00",
    "-5": "-₹5.00",
    "-123456.78": "-₹1,23,456.78",
    "-12345678.9": "-₹1,23,45,678.90",
}
"""Source: CLDR, en_IN, currency pattern `¤#,##,##0.00`."""


@pytest.mark.slow
def test_amounts_and_counts_of_india_are_grouped_by_lakhs_of_either_sign(tmp_path: Path) -> None:
    money = sheet_money(Speech(locale="en_IN", currency="INR"))
    cells = [yours(Decimal(amount), money) for amount in AMOUNTS]
    counts = [yours(1234567, "#,##0"), yours(-1234567, "#,##0")]
    content = one_sheet(*cells, *counts, language="en-IN")
    assert shown(content, tmp_path) == [*AMOUNTS.values(), "12,34,567", "-12,34,567"]


@pytest.mark.parametrize("language", ["en-GB", "de", ""])
def test_counts_elsewhere_keep_the_plain_format(language: str) -> None:
    book = opened(one_sheet(yours(1234567, "#,##0"), language=language))
    assert book["Page"]["A1"].number_format == "#,##0"


@pytest.mark.parametrize(
    ("named", "wanted"),
    [
        ("Quote 2026-1125-K7QM", "&LPage · Quote 2026-1125-K7QM&R"),
        ("2 & 3 &P", "&LPage · 2 && 3 &&P&R"),
        ("&[Page] \n x", "&LPage · &&[Page] x&R"),
        ("_x003D_", "&LPage · _x005F_x003D_&R"),
        ("", "&LPage&R"),
        ("x" * 500, "&LPage · " + "x" * 99 + "…&R"),
    ],
)
def test_the_footer_names_what_it_is_of_and_the_page(named: str, wanted: str) -> None:
    """ECMA-376, part 1, 18.3.1.46: `&A`, `&P`, `&N` are the sheet, the page and all pages."""
    grid = Grid(Workbook(), "Plain", [10])
    set_up(grid, "en_GB", named, heads_row=1, wide=False)
    said = str(grid.sheet.HeaderFooter.oddFooter)
    assert said == wanted.replace("Page", "&A", 1) + "&P / &N"
    assert len(said) <= 255


def test_every_sheet_of_a_quote_names_it_in_the_footer_and_of_a_comparison_its_order() -> None:
    quote = sample_quote()
    costing, sizes = workbook_bytes(quote), comparison_bytes(compared(PRAM, COT))
    for content, name in ((costing, f"Quote {quote.number}"), (sizes, sample_order().title)):
        for at in range(1, len(opened(content).sheetnames) + 1):
            sheet = part(content, f"xl/worksheets/sheet{at}.xml")
            assert f"<oddFooter>&amp;L&amp;A · {name}&amp;R&amp;P / &amp;N</oddFooter>" in sheet


def test_every_chart_has_a_name_and_says_what_it_shows() -> None:
    """ECMA-376, part 1, 20.5.2.8: `descr` is the alternative text of a frame."""
    quote = sample_quote()
    said = re.findall(
        r"<(?:xdr:)?cNvPr [^>]*>", part(workbook_bytes(quote), "xl/drawings/drawing1.xml")
    )
    assert len(said) == 1
    assert 'name="Where the price goes"' in said[0]
    speech = Speech(locale="en_GB", currency="GBP")
    assert f"the {speech.money(quote.price.total)} that the buyer pays" in said[0]
    assert f"Profit {speech.money(quote.price.profit)}" in said[0]
    sizes = part(comparison_bytes(compared(PRAM, COT)), "xl/drawings/drawing1.xml")
    assert re.findall(r'name="([^"]*)"', sizes) == [
        "What each price pays for",
        "What an hour earns",
    ]
    assert sizes.count(" descr=") == 2
