"""What a form sends, as the content of a document; and such content as a form sends it.

A field is named by its place: `blanket.sections.2.stripes.1.rows`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeAlias

from werkzeug.datastructures import MultiDict

from quoting.schema.several import is_number

MOST_PARTS = 8

Sent: TypeAlias = "MultiDict[str, str]"
Content = dict[str, object]


def line_numbers(names: Iterable[str]) -> dict[str, list[int]]:
    """Return the numbers that the lines of each list bear, in order, by the list's name.

    Nothing is dropped: a list that is too long is the core's to refuse.
    """
    numbers: dict[str, set[int]] = {}
    for name in names:
        parts = name.split(".", MOST_PARTS)
        for place, part in enumerate(parts):
            if is_number(part):
                numbers.setdefault(".".join(parts[:place]), set()).add(int(part))
    return {name: sorted(lines) for name, lines in numbers.items()}


def content_of(sent: Mapping[str, str]) -> Content:
    """Return the tables and texts that a form says; a field left blank is not there.

    The lines of a list are a table by their numbers.
    """
    root: Content = {}
    for name, text in sent.items():
        *tables, key = name.split(".", MOST_PARTS)
        table = root
        for part in tables:
            inner = table.setdefault(part, {})
            table = inner if isinstance(inner, dict) else table.setdefault(f"{part}.", {})  # type: ignore[assignment]
        if text.strip():
            table.setdefault(key, text)
    return root


def sent_as(content: object, place: str = "") -> Iterator[tuple[str, str]]:
    """Yield the names and texts of the fields that say some content."""
    if isinstance(content, str):
        yield place, content
        return
    lines = content if isinstance(content, Mapping) else dict(enumerate(_items(content), 1))
    for part, inner in lines.items():
        yield from sent_as(inner, f"{place}.{part}" if place else str(part))


def _items(content: object) -> list[object]:
    return content if isinstance(content, list) else []
