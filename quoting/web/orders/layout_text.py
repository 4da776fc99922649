"""A layout as a line of text: its colours, the centre first, then how many: `teal, oat, oat x 22`.

A number alone at the end is how many, too, as a spreadsheet has it. Instead of that it may have a
share: `teal, oat, oat, share 2`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import count

from quoting.notation import split_line, written_part
from quoting.schema.several import VALUE_FIELD

_COUNTED = re.compile(r"(.*\S)\s+[x×]\s*(\S+)")
_SHARED = re.compile(r"(.*\S)[,;\t]\s*share\s+(\S+)")


def layout_fields(line: str) -> Mapping[str, str]:
    """Return the fields of a layout, by their names in it."""
    rest, counted = _taken(_COUNTED, line.strip())
    rest, share = _taken(_SHARED, rest)
    parts = split_line(rest)
    if not counted and parts[-1].isdecimal():
        counted = parts.pop()
    colours = {_colour(n): text for n, text in enumerate(parts, 1)}
    return colours | {"share": share, "count": counted}


def layout_line(fields: Mapping[str, str]) -> str:
    """Return a layout as a line."""
    names = (_colour(number) for number in count(1))
    colours = []
    while (name := next(names)) in fields:
        colours.append(written_part(fields[name]))
    share, counted = fields.get("share", ""), fields.get("count", "")
    line = ", ".join([*colours, *([f"share {share}"] if share else [])])
    return f"{line} x {counted}" if counted else line


def _taken(ending: re.Pattern[str], line: str) -> tuple[str, str]:
    """Return a line without its ending, and what the ending says."""
    found = ending.fullmatch(line)
    return (found[1], found[2]) if found else (line, "")


def _colour(number: int) -> str:
    return f"colours.{number}.{VALUE_FIELD}"
