"""Adding, removing, moving and putting back the lines of the workshop's lists."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.schema.several import is_number
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.shop import speech_now

REMOVED = "removed"
"""The hidden fields of a form in which removed lines wait to be put back."""

_YARN = {
    "name": "",
    "put_ups.1.grams": "",
    "put_ups.1.pack": "1",
    "colours.1.name": "",
    "colours.1.value": "#b0a89a",
}

NEW_LINES: Mapping[str, Mapping[str, str]] = {
    "yarns": _YARN,
    "put_ups": {"grams": "", "pack": "1"},
    "colours": {"name": "", "value": "#b0a89a"},
    "stock": {"colour": "", "grams": ""},
    "patterns": {"name": "", "multiple": "1"},
    "swatches": {"yarn": "", "stitch": ""},
    "timings": {"stitch": "", "stitches": "", "hands_on": "yes"},
    "fees": {"name": "", "on": "total"},
    "bands": {"to": ""},
    "days_off": {"value": ""},
    "exchange": {"currency": ""},
}
"""What a new line of each list begins with, the field to go to first."""

LINE_NAMES: Mapping[str, str] = {
    "yarns": "Yarn",
    "put_ups": "way it is sold",
    "colours": "colour",
    "stock": "ball on the shelf",
    "patterns": "Stitch pattern",
    "swatches": "Swatch",
    "timings": "Timing",
    "fees": "Fee",
    "bands": "Delivery charge",
    "days_off": "Day off",
    "exchange": "Rate",
}
"""What a line of each list is called."""


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

    @property
    def what(self) -> str:
        """What the line is called, with the name that it gives itself."""
        texts = dict(self.fields)
        called = next((texts[n] for n in ("name", "stitch", "colour", "to") if texts.get(n)), "")
        kind = speech_now().worded(LINE_NAMES[_kind(self.list_name)].lower())
        return " ".join(filter(None, [kind, called]))

    @property
    def text(self) -> str:
        """The line as a hidden field has it."""
        return json.dumps([self.list_name, self.at, self.fields])


def removed_lines(sent: Sent) -> tuple[Removed, ...]:
    """Return the lines that can be put back, the last removed first; what is none is left out."""
    return tuple(line for line in map(_removed, sent.getlist(REMOVED)) if line is not None)


def change_lines(asked: str, sent: Sent) -> Changed | None:
    """Return the form with its lines changed; None where a button asks for something else.

    Buttons ask `add yarns.2.colours`, `remove fees.1`, `up timings.3`, `down timings.3`,
    `back 1`. What cannot be done changes nothing.
    """
    what, _, place = asked.partition(" ")
    if what == "back":
        return _put_back(int(place), sent) if is_number(place) else None
    if what == "add":
        return _add(place, sent) if _kind(place) in NEW_LINES else None
    list_name, _, number = place.rpartition(".")
    if what not in {"remove", "up", "down"} or _kind(list_name) not in NEW_LINES:
        return None
    return _move(what, list_name, int(number), sent) if is_number(number) else None


def _add(list_name: str, sent: Sent) -> Changed:
    numbers = line_numbers(sent).get(list_name, [])
    added = _arranged(sent, list_name, numbers)
    new = NEW_LINES[_kind(list_name)]
    line = f"{list_name}.{len(numbers) + 1}."
    for name, text in new.items():
        added[line + name] = text
    return Changed(added, line + next(iter(new)))


def _move(what: str, list_name: str, number: int, sent: Sent) -> Changed:
    order = list(line_numbers(sent).get(list_name, []))
    if number not in order:
        return Changed(sent, "")
    at = order.index(number)
    if what == "remove":
        gone = Removed(list_name=list_name, at=at, fields=_fields(sent, list_name, number))
        del order[at]
        kept = _arranged(sent, list_name, order)
        return Changed(_waiting(kept, [gone.text, *kept.getlist(REMOVED)]), "back 1")
    to = min(max(0, at + (-1 if what == "up" else 1)), len(order) - 1)
    order.insert(to, order.pop(at))
    return Changed(_arranged(sent, list_name, order), f"{what} {list_name}.{to + 1}")


def _put_back(position: int, sent: Sent) -> Changed:
    waiting = removed_lines(sent)
    if not 1 <= position <= len(waiting):
        return Changed(sent, "")
    line = waiting[position - 1]
    numbers = line_numbers(sent).get(line.list_name, [])
    at = min(line.at, len(numbers))
    new = max(numbers, default=0) + 1
    there = _waiting(sent, [other.text for other in waiting if other is not line])
    for name, text in line.fields:
        there[f"{line.list_name}.{new}.{name}"] = text
    back = _arranged(there, line.list_name, [*numbers[:at], new, *numbers[at:]])
    return Changed(back, f"{line.list_name}.{at + 1}.{line.fields[0][0]}")


def _arranged(sent: Sent, list_name: str, order: Sequence[int]) -> Sent:
    """Return the form with the lines of a list in that order, numbered from 1."""
    begins = f"{list_name}."
    arranged: Sent = MultiDict(
        (name, text) for name, text in sent.items(multi=True) if not name.startswith(begins)
    )
    for new, old in enumerate(order, 1):
        for name, text in _fields(sent, list_name, old):
            arranged.add(f"{begins}{new}.{name}", text)
    return _waiting(arranged, _moved_with(sent, list_name, order))


def _waiting(sent: Sent, lines: Iterable[str]) -> Sent:
    """Return the form with these lines to be put back, in place of any before."""
    fields = [(name, text) for name, text in sent.items(multi=True) if name != REMOVED]
    return MultiDict([*fields, *((REMOVED, line) for line in lines)])


def _moved_with(sent: Sent, list_name: str, order: Sequence[int]) -> Iterable[str]:
    """Yield the lines that can be put back, those of a line's own lists where it now stands."""
    begins = f"{list_name}."
    for line in removed_lines(sent):
        number, _, rest = line.list_name.removeprefix(begins).partition(".")
        if not (line.list_name.startswith(begins) and is_number(number)):
            yield line.text
        elif int(number) in order:
            inner = f"{begins}{order.index(int(number)) + 1}.{rest}"
            yield Removed(list_name=inner, at=line.at, fields=line.fields).text


def _fields(sent: Sent, list_name: str, number: int) -> tuple[tuple[str, str], ...]:
    begins = f"{list_name}.{number}."
    return tuple(
        (name.removeprefix(begins), text)
        for name, text in sent.items(multi=True)
        if name.startswith(begins)
    )


def _removed(text: str) -> Removed | None:
    """Return the line that a hidden field has, None where it has none."""
    try:
        match json.loads(text):
            case [str(list_name), int(at), [[str(), str()], *_] as pairs]:
                fields = tuple((str(name), str(value)) for name, value in pairs)
            case _:
                return None
    except (ValueError, TypeError):
        return None
    known = _kind(list_name) in NEW_LINES and at >= 0
    return Removed(list_name=list_name, at=at, fields=fields) if known else None


def _kind(list_name: str) -> str:
    return list_name.rpartition(".")[2]
