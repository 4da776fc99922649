"""How the sheets are printed: the locale's paper, one page wide, headings on every page."""

from __future__ import annotations

from openpyxl.worksheet.header_footer import HeaderFooterItem, _HeaderFooterPart
from openpyxl.worksheet.page import PageMargins
from openpyxl.worksheet.properties import PageSetupProperties

from exports.sheets.checks import STATE_ROW
from exports.sheets.grid import Grid
from exports.sheets.page_breaks import keep_blocks
from exports.sheets.xml_text import uncoded
from quoting.wording.locales import sheet_of
from quoting.wording.paper import Sheet

A4, LETTER = "9", "1"

LONGEST_NAME = 100
"""Of what the footer names: a footer has room for 255 characters, its codes with them."""


class _Footer(HeaderFooterItem):
    """A footer just as it is told; the library's own reads codes into a text in brackets."""

    def __str__(self) -> str:
        return f"&L{self.left}&R{self.right}"


def set_up(grid: Grid, locale: str, named: str, *, heads_row: int, wide: bool) -> None:
    """Set up a sheet's printing, and keep its head in sight: down to how the checks stand, or on.

    `named` is what the footer of every page says after the sheet's title.
    """
    sheet = grid.sheet
    page = sheet.page_setup
    paper = sheet_of(locale)
    page.paperSize = LETTER if paper is Sheet.LETTER else A4
    page.orientation = "landscape" if wide else "portrait"
    page.fitToWidth, page.fitToHeight = 1, 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.page_margins = PageMargins(left=0.5, right=0.5, top=0.6, bottom=0.7)
    sheet.HeaderFooter.oddFooter = _footer(named)
    sheet.sheet_view.showGridLines = False
    if grid.flags:
        sheet.print_area = grid.printed
    sheet.freeze_panes = f"A{max(heads_row, STATE_ROW) + 1}"
    sheet.print_title_rows = f"{heads_row}:{heads_row}"
    keep_blocks(grid, paper, heads_row)


def _footer(named: str) -> HeaderFooterItem:
    """Return the title of the sheet, a name and the page's number.

    Source: ECMA-376, part 1, 18.3.1.46: `&` begins a code, `&&` is one. A digit just after a code
    may be taken for a part of it, so the name begins with no digit.
    """
    line = " ".join(named.split())
    cut = line if len(line) <= LONGEST_NAME else line[: LONGEST_NAME - 1] + "…"
    said = f" · {uncoded(cut).replace('&', '&&')}" if cut else ""
    return _Footer(
        left=_HeaderFooterPart(text=f"&A{said}"), right=_HeaderFooterPart(text="&P / &N")
    )
