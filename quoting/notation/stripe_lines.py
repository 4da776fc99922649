"""A stripe as a line of text, in the order worked: `teal, 2`, `teal 2`, `teal, 2, dc`, `teal`."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable, Iterator, Sequence

_USUAL_ROWS = "1"
_BARE = re.compile(r"(.*\S)\s+(\d+)(?:\s+(\S.*))?")
"""A line without marks: a colour, a count of rows, and perhaps a stitch."""

_QUOTED = re.compile(r'[,;\t"]|^\s|\s$')


def stripe_line(parts: Sequence[str]) -> str:
    """Return a stripe as a line; a blank at the end is left out where it is usual."""
    colour, rows, *stitch = (written_part(part) for part in parts)
    return ", ".join([colour, rows, *filter(None, stitch)])


def written_part(text: str) -> str:
    """Return a part of a line, in quotation marks where it would not be read as one."""
    return '"' + text.replace('"', '""') + '"' if _QUOTED.search(text) else text


def read_stripe_lines(text: str) -> Iterator[tuple[int, Sequence[str]]]:
    """Yield each line that is not blank, with its number in the text, as colour, rows, stitch."""
    for number, line in enumerate(text.splitlines(), 1):
        if line.strip():
            yield number, _parts(line)


def _parts(line: str) -> Sequence[str]:
    """Return the parts of a line, split as a spreadsheet copies them or as one types them."""
    mark = _mark(line)
    if mark not in line and '"' not in line and (bare := _BARE.fullmatch(line.strip())):
        return bare[1], bare[2], bare[3] or ""
    colour, *others = _split(line, mark)
    rows, *rest = others or [_USUAL_ROWS]
    return colour, rows, f"{mark} ".join(_stripped(rest))


def split_line(line: str) -> list[str]:
    """Return the parts of a line, as a spreadsheet copies them or as one types them."""
    return [part.strip() for part in _split(line, _mark(line))]


def _mark(line: str) -> str:
    return next((mark for mark in "\t;" if mark in line and '"' not in line), ",")


def _split(line: str, mark: str) -> list[str]:
    try:
        (found,) = csv.reader([line], delimiter=mark, skipinitialspace=True)
    except csv.Error:  # a part longer than any that can be meant
        return [line]
    return found


def _stripped(parts: Iterable[str]) -> Iterator[str]:
    return (part.strip() for part in parts)
