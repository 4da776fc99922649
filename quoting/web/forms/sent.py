"""What a form sends, as the content of a document; and such content as a form sends it.

A field is named by its place: `blanket.sections.2.stripes.1.rows`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeAlias

from werkzeug.datastructures import MultiDict

MOST_PARTS = 8
MOST_NUMBER_LENGTH = 6

Sent: TypeAlias = "MultiDict[str, str]"
Content = dict[str, object]


def is_number(part: str) -> bool:
    """Return whether a part of a name is the number of a line."""
    return part.isascii() and part.isdigit() and len(part) <= MOST_NUMBER_LENGTH


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
    """Return the tables, lists and texts that a form says; a field left blank is not there."""
    root: Content = {}
    for name, text in sent.items():
        *tables, key = name.split(".", MOST_PARTS)
        table = root
        for part in tables:
            inner = table.setdefault(part, {})
            table = inner if isinstance(inner, dict) else table.setdefault(f"{part}.", {})  # type: ignore[assignment]
        if text.strip():
            table.setdefault(key, text)
    return {name: _with_lists(inner) for name, inner in root.items()}


def _with_lists(content: object) -> object:
    """Return content whose numbered tables are lists, in the order of their numbers."""
    if not isinstance(content, dict):
        return content
    numbered = sorted((name for name in content if is_number(name)), key=int)
    if numbered:
        return [_with_lists(content[name]) for name in numbered]
    return {name: _with_lists(inner) for name, inner in content.items()}


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
