"""Lines of a form's lists put in another order, taken out, and put back, by field names alone."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple, TypeVar

from werkzeug.datastructures import MultiDict

from quoting.schema.several import is_number
from quoting.web.forms.sent import Sent, line_numbers

T = TypeVar("T")

REMOVED = "removed"
"""The hidden fields of a form in which removed lines wait to be put back."""

MOST_WAITING = 20
"""Of the lines that were removed, the last so many can be put back."""

_CALLED_BY = ("name", "what", "colour", "stitch", "to")
"""The fields that tell a line from the others, the first that says anything."""


class Changed(NamedTuple):
    """A form after a change of its lines, and the field or button to go on from."""

    sent: Sent
    focus: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Removed:
    """A line that was taken out: of which list, at which place of it, and its fields."""

    list_name: str
    at: int
    fields: tuple[tuple[str, str], ...]

    def told(self, names: Mapping[str, str]) -> str:
        """Return what the line is called; `names` are of lines, by the ends of lists' names."""
        texts = dict(self.fields)
        called = next((texts[name] for name in _CALLED_BY if texts.get(name)), str(self.at + 1))
        return f"{(of_list(names, self.list_name) or 'line').lower()} {called}"

    @property
    def stood_at(self) -> str:
        """The place of the line, as a button names it."""
        return f"{self.list_name}.{self.at + 1}"

    @property
    def text(self) -> str:
        """The line as a hidden field has it."""
        return json.dumps([self.list_name, self.at, self.fields])


def list_kind(list_name: str) -> str:
    """Return the last part of a list's name, which says what its lines are."""
    return list_name.rpartition(".")[2]


def of_list(lists: Mapping[str, T], list_name: str) -> T | None:
    """Return what a table has for a list; its keys are ends of lists' names, the longest counts.

    Numbers of lines are no part of them: `layouts.colours` are those of every layout.
    """
    words = [part for part in list_name.split(".") if not is_number(part)]
    ends = (".".join(words[first:]) for first in range(len(words)))
    return next((lists[end] for end in ends if end in lists), None)


def removed_lines(sent: Sent) -> tuple[Removed, ...]:
    """Return the lines that can be put back, the last removed first; what is none is left out."""
    return tuple(line for line in map(_removed, sent.getlist(REMOVED)) if line is not None)


def take_out(sent: Sent, list_name: str, number: int) -> Changed:
    """Return a form without one line of a list, which waits to be put back."""
    order = line_numbers(sent)[list_name]
    at = order.index(number)
    gone = Removed(list_name=list_name, at=at, fields=_fields(sent, list_name, number))
    kept = arranged(sent, list_name, order[:at] + order[at + 1 :])
    return Changed(_waiting(kept, [gone.text, *kept.getlist(REMOVED)]), "back 1")


def put_back(sent: Sent, position: int) -> Changed:
    """Return a form with one of its removed lines, counted from 1, where it stood."""
    waiting = removed_lines(sent)
    if not 1 <= position <= len(waiting):
        return Changed(sent, "")
    line = waiting[position - 1]
    numbers = line_numbers(sent).get(line.list_name, [])
    at = min(line.at, len(numbers))
    new = max(numbers, default=0) + 1
    later = [_after(line, other) for other in waiting[: position - 1]]
    there = _waiting(sent, [other.text for other in (*later, *waiting[position:])])
    for name, text in line.fields:
        there.add(f"{line.list_name}.{new}.{name}", text)
    back = arranged(there, line.list_name, [*numbers[:at], new, *numbers[at:]])
    return Changed(back, f"{line.list_name}.{at + 1}.{line.fields[0][0]}")


def _after(line: Removed, other: Removed) -> Removed:
    """Return where a line stood that was removed after one that is put back before it."""
    pushed = other.list_name == line.list_name and other.at >= line.at
    return replace(other, at=other.at + 1) if pushed else other


def arranged(sent: Sent, list_name: str, order: Sequence[int]) -> Sent:
    """Return a form with the lines of a list in that order, numbered from 1."""
    begins, lines, kept = f"{list_name}.", _lines(sent, list_name), MultiDict[str, str]()
    for name, text in sent.items(multi=True):
        if not (name.startswith(begins) and "." in name.removeprefix(begins)):
            kept.add(name, text)
    for new, old in enumerate(order, 1):
        for name, text in lines.get(str(old), []):
            kept.add(f"{begins}{new}.{name}", text)
    return _waiting(kept, _moved_with(sent, list_name, order))


def _waiting(sent: Sent, lines: Iterable[str]) -> Sent:
    """Return a form with these lines to be put back, in place of any before."""
    fields = [(name, text) for name, text in sent.items(multi=True) if name != REMOVED]
    return MultiDict([*fields, *((REMOVED, line) for line in [*lines][:MOST_WAITING])])


def _moved_with(sent: Sent, list_name: str, order: Sequence[int]) -> Iterator[str]:
    """Yield the lines that can be put back, those of a line's own lists where it now stands."""
    begins = f"{list_name}."
    for line in removed_lines(sent):
        number, _, rest = line.list_name.removeprefix(begins).partition(".")
        if not (line.list_name.startswith(begins) and is_number(number)):
            yield line.text
        elif int(number) in order:
            inner = f"{begins}{order.index(int(number)) + 1}.{rest}"
            yield replace(line, list_name=inner).text


def _lines(sent: Sent, list_name: str) -> dict[str, list[tuple[str, str]]]:
    """Return the fields of each line of a list, by the number that it bears."""
    begins = f"{list_name}."
    lines: dict[str, list[tuple[str, str]]] = {}
    for name, text in sent.items(multi=True):
        number, dot, rest = name.removeprefix(begins).partition(".")
        if name.startswith(begins) and dot:
            lines.setdefault(number, []).append((rest, text))
    return lines


def _fields(sent: Sent, list_name: str, number: int) -> tuple[tuple[str, str], ...]:
    return tuple(_lines(sent, list_name).get(str(number), []))


def _removed(text: str) -> Removed | None:
    """Return the line that a hidden field has, None where it has none."""
    try:
        match json.loads(text):
            case [str(list_name), int(at), [[str(), str()], *_] as pairs] if at >= 0:
                fields = tuple((str(name), str(value)) for name, value in pairs)
                return Removed(list_name=list_name, at=at, fields=fields)
    except (ValueError, TypeError, RecursionError):
        pass
    return None
