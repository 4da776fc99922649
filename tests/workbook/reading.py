"""Reads a sheet as a person does: blocks by their titles, columns by headings, lines by labels.

What has no heading is told by the letter of its column.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from openpyxl.worksheet.worksheet import Worksheet

from exports.sheets.lines import FURTHER

Line = dict[str, Any]

AT_HOME = {"ball": "skein", "balls": "skeins", "color": "colour", "colors": "colours"}
"""Words of other workshops, and those that the sample's, which has both, says for them."""


def as_at_home(text: str) -> str:
    """Return a title or a heading of any workshop's as the sample workshop says it."""
    words = re.compile(rf"\b({'|'.join(AT_HOME)})\b", re.IGNORECASE)
    return words.sub(lambda found: _like(found[0], AT_HOME[found[0].lower()]), text)


def _like(found: str, word: str) -> str:
    return word.capitalize() if found[0].isupper() else word


def block(sheet: Worksheet, title: str) -> list[Line]:
    """Return the lines under the headings of a block, each by these headings.

    The line that closes a list is none of them.
    """
    top = _title_row(sheet, title)
    heads = {
        c.column_letter: as_at_home(str(c.value))
        for c in sheet[top + 1]
        if c.value not in (None, "")
    }
    return [
        {heads.get(letter, letter): value for letter, value in line.items()}
        for line in _lines(sheet, top + 2)
        if FURTHER not in line.values()
    ]


def plain_block(sheet: Worksheet, title: str) -> list[Line]:
    """Return the lines under the title of a block that has no headings, by column letters."""
    return list(_lines(sheet, _title_row(sheet, title) + 1))


def last_figures(sheet: Worksheet, title: str) -> Line:
    """Return the figure of each line of a block of the costing, by its label."""
    lines = plain_block(sheet, title)
    return {str(line["A"]): line["F"] for line in lines if "A" in line and "F" in line}


def _title_row(sheet: Worksheet, title: str) -> int:
    """Return the row of a block's title: over it nothing is written."""
    (top,) = (
        cell.row
        for cell in sheet["A"]
        if as_at_home(str(cell.value)) == title and sheet.cell(cell.row - 1, 1).value is None
    )
    return top


def _lines(sheet: Worksheet, row: int) -> Iterator[Line]:
    """Yield what every line holds until one holds nothing."""
    while row <= sheet.max_row:
        line = {c.column_letter: c.value for c in sheet[row] if c.value not in (None, "")}
        if not line:
            return
        yield line
        row += 1


def sentences(sheet: Worksheet, title: str) -> list[str]:
    """Return the sentences of a block of notes; none where there is no such block."""
    if title not in [cell.value for cell in sheet["A"]]:
        return []
    return [str(line["A"]) for line in plain_block(sheet, title)]


def by(lines: list[Line], heading: str) -> dict[str, Line]:
    """Return lines by what they say in one column, which no two of them say alike."""
    found = {str(line[heading]): line for line in lines if heading in line}
    assert len(found) == sum(heading in line for line in lines)
    return found
