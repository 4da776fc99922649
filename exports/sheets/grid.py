"""A sheet that is written line by line, and keeps the value of every formula."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from copy import copy
from dataclasses import dataclass

from openpyxl import Workbook
from openpyxl.cell.cell import Cell as SheetCell
from openpyxl.styles.cell_style import StyleArray
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.worksheet import Worksheet

from exports.sheets.cells import OWN, Cell, Formula, Look, Ref, Span, Value, clean_text
from exports.sheets.line_heights import LINE_POINTS, line_height
from exports.sheets.rules import Rule
from exports.sheets.styles import fill_of, look_beside, style_of
from quoting.wording import grouped_as

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
LONGEST_TEXT = 32_767
"""Characters that a cell can hold (ECMA-376, part 1, 18.3.1.4, as programs have it)."""

NOT_RECKONED = "cannot be worked out"
LEAD_INS = ("=", "+", "-", "@", "\t", "\r", "\n", "#")
"""A text that begins so would be read as a formula or an error if it were typed (OWASP)."""


@dataclass(frozen=True, slots=True)
class Fault:
    """What may be wrong with a line as a whole: when, and what is then said.

    `said` is an expression that comes to a text; `now` is what is said as the file is written.
    """

    condition: str
    said: str
    now: str = ""


class Grid:
    """One sheet under construction. `next_row` is the row that the next line takes.

    `begins` has the rows of the titles of blocks.
    `worded` says the program's own texts, headings and flags among them, in a workshop's words.
    In the column `flags` every line that can be wrong says what is wrong with it, or nothing; in
    the column `labels` stands what a line is about. `width` is that of all columns before, in
    digits.
    """

    def __init__(
        self,
        book: Workbook,
        title: str,
        widths: Sequence[float],
        *,
        flags: str = "",
        labels: str = "A",
        worded: Callable[[str], str] = str,
    ) -> None:
        self.book = book
        self.worded = worded
        self.title = title
        self.sheet: Worksheet = book.create_sheet(title)
        self.flags, self.labels = flags, labels
        self.width = sum(widths[: LETTERS.index(flags)] if flags else widths)
        self._widths = widths
        self.cached: dict[str, Value] = {}
        self.next_row = 1
        self.begins: list[int] = []
        self._dressed: dict[tuple[str, ...], StyleArray] = {}
        self._checked: dict[Rule, DataValidation] = {}
        self._last_flag = 1
        for letter, width in zip(LETTERS, widths, strict=False):
            self.sheet.column_dimensions[letter].width = width

    def line(
        self, *cells: Cell | None, height: float | None = None, faults: Sequence[Fault] = ()
    ) -> list[Ref]:
        """Write a row from column A and return the addresses of its cells; None is a gap.

        What is typed into its inputs is checked, and what is wrong is said at the end of the row.
        """
        row, self.next_row = self.next_row, self.next_row + 1
        tall = height or line_height(cells, self._widths)
        if tall > LINE_POINTS:
            self.sheet.row_dimensions[row].height = tall
        refs = [
            self._put(row, at, cell, look_beside(cell, before))
            for at, (before, cell) in enumerate(zip((None, *cells), cells, strict=False), 1)
            if cell is not None
        ]
        self._flag(row, cells, faults)
        return refs

    def add(self, letter: str, row: int, cell: Cell) -> Ref:
        """Write one more cell of a line that stands."""
        return self._put(row, LETTERS.index(letter) + 1, cell, cell.look)

    @property
    def printed(self) -> str:
        """The cells that are printed: all but what is said of lines that are wrong."""
        last = LETTERS[LETTERS.index(self.flags) - 1] if self.flags else LETTERS[-1]
        return f"A1:{last}{self.sheet.max_row}"

    @property
    def flagged(self) -> Span:
        """All that the lines of this sheet say of what is wrong with them."""
        return Span(self.title, self.flags, 1, self._last_flag + 1)

    def gap(self) -> None:
        """Leave a row free."""
        self.next_row += 1

    def block(self, title: str) -> None:
        """Begin a block of the sheet under its title, after a free row."""
        self.gap()
        self.begins.append(self.next_row)
        self.line(Cell(title, Look.BLOCK))

    def name(self, name: str, ref: Ref) -> Ref:
        """Give a cell a name that formulas and people can use."""
        address = f"{ref.sheet}!${ref.column}${ref.row}"
        self.book.defined_names[name] = DefinedName(name, attr_text=address)
        return ref

    def fill(self, row: int, colour_code: str) -> None:
        """Fill the first cell of a row with a yarn's colour."""
        at = _cell(self.sheet, row, 1)
        if (colour_code,) not in self._dressed:
            _wear(at, _worn(at))
            at.fill = fill_of(colour_code)
            self._dressed[colour_code,] = _worn(at)
        _wear(at, self._dressed[colour_code,])

    def filter_from(self, heads_row: int) -> None:
        """Let the lines under headings be filtered, down to the last that is written."""
        last = LETTERS[self.sheet.max_column - 1]
        self.sheet.auto_filter.ref = f"A{heads_row}:{last}{self.sheet.max_row}"

    def break_here(self) -> None:
        """Begin a new page of print with the next line."""
        self.sheet.row_breaks.append(Break(id=self.next_row - 1))

    def _flag(self, row: int, cells: Sequence[Cell | None], faults: Sequence[Fault]) -> None:
        """Let the inputs of a line take only what they may; write what is wrong with the line."""
        ruled = [
            (f"{letter}{row}", cell.rule)
            for letter, cell in zip(LETTERS, cells, strict=False)
            if cell is not None and cell.rule is not None
        ]
        for at, rule in ruled:
            self._check(rule, at)
        told = [Fault(rule.broken(at), f'"{rule.said}"') for at, rule in ruled]
        if self.flags and (told or faults):
            flag = _flag_of([*told, *faults], self.worded)
            self._put(row, LETTERS.index(self.flags) + 1, Cell(flag, Look.FLAG), Look.FLAG)
            self._last_flag = max(self._last_flag, row)

    def _check(self, rule: Rule, at: str) -> None:
        """Let a cell take what a rule says; inputs of one rule share one check."""
        unnamed = rule.called("")
        if unnamed not in self._checked:
            self._checked[unnamed] = unnamed.validation()
            self.sheet.add_data_validation(self._checked[unnamed])
        self._checked[unnamed].add(at)

    def _put(self, row: int, column: int, cell: Cell, look: Look) -> Ref:
        at, content, letter = _new_cell(self.sheet, row, column), cell.content, LETTERS[column - 1]
        self._dress(at, look, cell.shape)
        if isinstance(content, Formula):
            _write(at, "=" + content.expression.replace(f"{self.title}!", ""), "f")
            self.cached[f"{letter}{row}"] = content.value
            return Ref(self.title, letter, row, content.value)
        if isinstance(content, str):
            _write_text(at, clean_text(self.worded(content) if look in OWN else content))
        else:
            _write(at, content, "n")
        return Ref(self.title, letter, row, content)

    def _dress(self, at: SheetCell, look: Look, shape: str) -> None:
        """Give a cell the named style of its look, and its format; each pair is made up once.

        The library's own look-up by name goes through all names each time.
        """
        worn = self._dressed.get((look, shape))
        if worn is None:
            worn = self._dressed[look, shape] = self._made_up(at, look, shape)
        _wear(at, worn)

    def _made_up(self, at: SheetCell, look: Look, shape: str) -> StyleArray:
        if look.value not in self.book.named_styles:
            self.book.add_named_style(style_of(look))
        at.style = look.value
        at.number_format = grouped_as(shape, self.book.properties.language)
        return _worn(at)


def _cell(sheet: Worksheet, row: int, column: int) -> SheetCell:
    at = sheet.cell(row, column)
    assert isinstance(at, SheetCell), "no cell is merged into another"  # noqa: S101
    return at


def _new_cell(sheet: Worksheet, row: int, column: int) -> SheetCell:
    """Return a new cell of a sheet: most lines are new, and looking for old cells takes longer."""
    at = sheet._cells[row, column] = SheetCell(sheet, row, column)
    return at


def _write(at: SheetCell, value: Value, kind: str) -> None:
    """Write a value whose kind is known: the library would look for it in every one anew."""
    at._value = value  # type: ignore[attr-defined]
    at.data_type = kind


def _worn(at: SheetCell) -> StyleArray:
    """Return a copy of all of a cell's style, which the library's type stubs leave out."""
    style: StyleArray = copy(at._style)  # type: ignore[attr-defined]
    return style


def _wear(at: SheetCell, style: StyleArray) -> None:
    """Give a cell a style that others may share: who changes one of them changes a copy."""
    at._style = style  # type: ignore[attr-defined]


def _flag_of(faults: Sequence[Fault], worded: Callable[[str], str]) -> Formula:
    """Return the first fault that is found, of those of a line, in words; else nothing."""
    said = "".join(f"IF({fault.condition},{worded(fault.said)}," for fault in faults)
    now = next((fault.now for fault in faults if fault.now), "")
    return Formula(f'IFERROR({said}""{")" * len(faults)},"{NOT_RECKONED}")', worded(now))


def _write_text(at: SheetCell, text: str) -> None:
    """Write a text that stays one, also when somebody edits the cell; of no text nothing."""
    if not text:
        return
    _write(at, text[:LONGEST_TEXT], "s")
    if text.startswith(LEAD_INS):
        _wear(at, _worn(at))
        at.quotePrefix = True
