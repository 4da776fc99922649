"""What is on each sheet, how it looks and how it prints."""

from __future__ import annotations

import io
import re
import subprocess
import sys
import zipfile
from dataclasses import replace
from datetime import timedelta

import pytest
from openpyxl.workbook import Workbook

from exports.costing_workbook import workbook_bytes
from exports.sheets.cells import Look
from exports.sheets.paper import A4, LETTER
from quoting.core.ground.money import exact
from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.quote import Quote, quote_order
from quoting.wording import caution_sentence, pass_words, sheet_money, speech_of
from tests.examples import TODAY, sample_order, sample_quote, sample_workshop
from tests.workbook.orders import quotes
from tests.workbook.recalculation import named, opened, place_of


@pytest.fixture(scope="module")
def quote() -> Quote:
    return sample_quote()


@pytest.fixture(scope="module")
def content(quote: Quote) -> bytes:
    return workbook_bytes(quote)


@pytest.fixture(scope="module")
def book(content: bytes) -> Workbook:
    return opened(content)


@pytest.fixture(scope="module")
def values(content: bytes) -> Workbook:
    return opened(content, values=True)


def test_the_sheets_are_named_in_words_of_the_trade(book: Workbook) -> None:
    assert book.sheetnames == [
        *("Summary", "Costing", "Yarn", "Hours", "Working guide"),
        *("Rows", "Actuals", "Checks", "Notes"),
    ]


@pytest.mark.parametrize("name", list(quotes()))
def test_every_line_of_the_quote_is_there_in_its_order(
    name: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    sheet = opened(written[name], values=True)["Costing"]
    rows = [[cell.value for cell in row] for row in sheet.iter_rows()]
    found = iter(
        (exact(row[2]), exact(row[4]), exact(row[5]))
        for row in rows
        if all(isinstance(row[at], (int, float)) for at in (2, 4, 5))
    )
    missing = [
        line
        for line in all_quotes[name].lines
        if line.kind is not LineKind.FEE
        and (exact(float(line.quantity)), exact(float(line.rate)), line.amount) not in found
    ]
    assert missing == []


def test_a_program_that_does_not_calculate_shows_the_quotes_figures(
    quote: Quote, values: Workbook
) -> None:
    assert exact(named(values, "total")) == quote.price.total
    assert exact(named(values, "earned_per_hour")) == quote.price.earned_per_hour


def test_no_formula_is_without_a_kept_value(content: bytes) -> None:
    with zipfile.ZipFile(io.BytesIO(content)) as parts:
        sheets = [parts.read(name).decode() for name in parts.namelist() if "worksheets" in name]
    kept = [re.findall(r"</f>(<v>|<v/>|</c>)", sheet) for sheet in sheets]
    assert {mark for marks in kept for mark in marks} == {"<v>"}


def test_each_figure_is_an_input_or_counted_or_a_formula(book: Workbook) -> None:
    marked = (Look.INPUT.value, Look.COUNTED.value, Look.QUOTED.value)
    loose = [
        (sheet.title, cell.coordinate)
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "n" and cell.value is not None and not cell.style.startswith(marked)
    ]
    assert loose == []


def test_inputs_are_marked_by_more_than_colour(book: Workbook) -> None:
    sheet, address = place_of(book, "making_pay")
    cell = book[sheet][address]
    assert cell.data_type == "n"
    assert cell.border.left.style == cell.border.right.style == "thin"


@pytest.mark.parametrize(("name", "code"), [("plain", "GBP"), ("yen", "JPY"), ("dinar", "KWD")])
def test_money_has_the_currencys_own_format(
    name: str, code: str, all_quotes: dict[str, Quote], written: dict[str, bytes]
) -> None:
    book = opened(written[name])
    sheet, address = place_of(book, "total")
    wanted = sheet_money(speech_of(all_quotes[name].workshop), code)
    assert book[sheet][address].number_format == wanted


def test_every_row_and_round_has_its_line(quote: Quote, values: Workbook) -> None:
    names = [cell.value for cell in values["Rows"]["B"]]
    plan = quote.plan
    assert names[-len(plan.passes) :] == [pass_words(worked) for worked in plan.passes]


def test_the_height_grows_to_the_blankets_own(quote: Quote, values: Workbook) -> None:
    last = [cell.value for cell in values["Rows"]["G"]][-1]
    assert last == pytest.approx(quote.plan.height_cm)


def test_a_turning_chain_that_counts_is_said_and_still_made(written: dict[str, bytes]) -> None:
    rows = opened(written["mixed, used"], values=True)["Rows"]
    assert any("dc stand for its first stitch" in str(cell.value) for cell in rows["A"])
    double = [row for row in rows.iter_rows(values_only=True) if row[3] == "dc"]
    assert double[0][5] == 3, "Crochet Guild of America lessons (1997): dc turns with 3"


def test_every_caution_is_said_in_a_sentence(quote: Quote, values: Workbook) -> None:
    said = [cell.value for cell in values["Notes"]["A"]]
    speech = speech_of(quote.workshop)
    assert quote.cautions
    assert {caution_sentence(caution, speech) for caution in quote.cautions} <= set(said)


def test_the_chart_shows_what_the_table_beside_it_says(content: bytes, values: Workbook) -> None:
    chart = zipfile.ZipFile(io.BytesIO(content)).read("xl/charts/chart1.xml").decode()
    kept = [float(v) for v in re.findall(r"<(?:c:)?pt idx=.*?<(?:c:)?v>([^<]*)<", chart)]
    check = place_of(values, "check")[1]
    last = int(check[1:]) - 1
    table = [values["Costing"][f"F{row}"].value for row in range(last - 8, last + 1)]
    assert kept == table


def test_heads_stay_in_sight_and_on_every_page(book: Workbook) -> None:
    rows = book["Rows"]
    top = rows.freeze_panes[1:]
    assert rows.print_title_rows == f"${int(top) - 1}:${int(top) - 1}"
    assert all(sheet.freeze_panes for sheet in book)


@pytest.mark.parametrize(("locale", "paper"), [("en_GB", A4), ("en_US", LETTER), ("de", A4)])
def test_the_paper_is_the_locales_and_pages_are_one_wide(locale: str, paper: str) -> None:
    book = opened(workbook_bytes(sample_quote(None, sample_workshop(locale=locale))))
    for sheet in book:
        assert str(sheet.page_setup.paperSize) == paper
        assert sheet.sheet_properties.pageSetUpPr.fitToPage
        assert (sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight) == (1, 0)
        assert "&P" in sheet.oddFooter.right.text


def test_the_same_quote_gives_the_same_bytes_and_another_day_others(
    quote: Quote, content: bytes
) -> None:
    assert workbook_bytes(quote) == content
    later = quote_order(sample_order(), sample_workshop(), today=TODAY + timedelta(days=1))
    assert workbook_bytes(later) != content


def test_a_yarn_shows_its_own_colour_and_nothing_else_is_coloured(book: Workbook) -> None:
    fills = {
        cell.fill.fgColor.rgb
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.fill.fill_type
    }
    assert fills == {"FFD9C9A3", "FF1F6F78", "FFA8512C", "FFF3F3F3"}


def test_a_workshop_without_fees_adds_up(written: dict[str, bytes]) -> None:
    values = opened(written["least price"], values=True)
    assert named(values, "fees") == 0


def test_a_least_price_is_a_line_of_its_own(all_quotes: dict[str, Quote]) -> None:
    kinds = [line.kind for line in all_quotes["least price"].lines]
    assert LineKind.MINIMUM in kinds


def test_loading_the_exports_does_not_load_the_spreadsheet_library() -> None:
    packages = ("charts", "comparison_workbook", "costing_workbook", "drawing", "records", "sheets")
    imports = "; ".join(f"import exports.{package}" for package in packages)
    asked = f"{imports}; import sys; print('openpyxl' in sys.modules)"
    said = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)
    assert said.stdout.strip() == "False"


def test_only_the_first_blankets_joins_are_shown_and_that_is_said() -> None:
    order = replace(sample_order(), quantity=2)
    rows = opened(workbook_bytes(sample_quote(order)))["Rows"]
    assert any("the first blanket" in str(cell.value) for cell in rows["A"])
