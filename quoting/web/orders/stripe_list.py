"""Stripes as one text, a line for each in the order worked: `teal, 2`, `teal 2`, `teal, 2, dc`.

Those of rounds have no stitch of their own. Layouts of motifs are typed so, too (`layout_text`).

A list of stripes is sent either as lines of fields or as such a text under `as_list`; both say the
same, and either is made of the other without loss, mistakes and all.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.core.ground.place import Place
from quoting.notation import read_stripe_lines, stripe_line
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.orders.layout_lines import LAYOUTS
from quoting.web.orders.layout_text import layout_fields, layout_line

MANY_STRIPES = 40
"""More than so many are shown as a text at first: a field for each would be a page of fields."""

_TEXT = ".as_list"
_PARTS = ("colour", "rows", "stitch")
_OF_ROUNDS = "blanket.centre.stripes"
_PARTS_OF_ROUNDS = ("colour", "rounds")
_LISTS = re.compile(
    r"blanket\.(first_rows|last_rows|sections\.\d+\.stripes|centre\.stripes|squares\.layouts)"
)


class TextLine(NamedTuple):
    """A line of a list that is sent as a text, counted from 1 with the blank ones.

    `round` is the round of a layout in it, where one is meant.
    """

    list_name: str
    number: int
    round: int | None = None

    @property
    def told(self) -> str:
        """Its number, and the round, as they are told: `line 3, round 2`."""
        return f"line {self.number}" + (f", round {self.round}" if self.round else "")


def texts_of(sent: Sent) -> dict[str, str]:
    """Return the texts of the lists that are sent as such, by the places of the lists."""
    names = (name for name in sent if name.endswith(_TEXT))
    places = {name: name.removesuffix(_TEXT) for name in names}
    return {place: sent[name] for name, place in places.items() if _LISTS.fullmatch(place)}


def spread(sent: Sent) -> Sent:
    """Return a form with every list of stripes as lines of fields."""
    for place in texts_of(sent):
        sent = as_lines(sent, place)
    return sent


def folded(sent: Sent) -> Sent:
    """Return a form with every list of very many stripes as a text."""
    for place, numbers in line_numbers(sent).items():
        if _LISTS.fullmatch(place) and len(numbers) > MANY_STRIPES:
            sent = as_text(sent, place)
    return sent


def as_asked(asked: str, sent: Sent) -> Sent:
    """Return a form with a list as a button asks: `as_text blanket.first_rows`, `as_lines ...`."""
    what, _, place = asked.partition(" ")
    change = {"as_text": as_text, "as_lines": as_lines}.get(what)
    return change(sent, place) if change and _LISTS.fullmatch(place) else sent


def as_lines(sent: Sent, place: str) -> Sent:
    """Return a form with one list as lines of fields."""
    text = sent.get(f"{place}{_TEXT}")
    if text is None:
        return sent
    lines = _without(sent, place)
    for number, fields in enumerate(_fields(text, place), 1):
        lines.update([(f"{place}.{number}.{name}", typed) for name, typed in fields.items()])
    return lines


def as_text(sent: Sent, place: str) -> Sent:
    """Return a form with one list as a text."""
    numbers = line_numbers(sent).get(place, [])
    lines = [_line(_within(sent, f"{place}.{number}."), place) for number in numbers]
    written = _without(sent, place)
    written[f"{place}{_TEXT}"] = "\n".join(lines)
    return written


def _fields(text: str, place: str) -> Iterator[Mapping[str, str]]:
    """Yield the fields of each line of a text, by their names in it."""
    if place == LAYOUTS:
        yield from (layout_fields(line) for line in text.splitlines() if line.strip())
        return
    names = _parts_of(place)
    for _, parts in read_stripe_lines(text):
        yield dict(zip(names, _as_many(parts, place), strict=True))


def _line(fields: Mapping[str, str], place: str) -> str:
    if place == LAYOUTS:
        return layout_line(fields)
    return stripe_line([fields.get(name, "") for name in _parts_of(place)])


def _parts_of(place: str) -> Sequence[str]:
    return _PARTS_OF_ROUNDS if place == _OF_ROUNDS else _PARTS


def _as_many(parts: Sequence[str], place: str) -> Sequence[str]:
    """Return a line's parts for its fields: where a stripe has no stitch, none is lost for that."""
    colour, count, more = parts
    if place != _OF_ROUNDS:
        return parts
    return colour, f"{count}, {more}" if more else count


def line_in_text(place: Place, texts: Mapping[str, str]) -> TextLine | None:
    """Return the line that a place is in; None where it is in no list that is sent as a text."""
    for length, number in enumerate(place.parts):
        within = ".".join(map(str, place.parts[:length]))
        if within in texts and isinstance(number, int):
            lines = [line for line, _ in read_stripe_lines(texts[within])]
            rounds = [part for part in place.parts[length + 1 :] if isinstance(part, int)]
            return TextLine(within, lines[number - 1], *rounds) if number <= len(lines) else None
    return None


def _within(sent: Sent, begins: str) -> Mapping[str, str]:
    """Return the fields whose names begin so, by the rest of their names."""
    return {n.removeprefix(begins): text for n, text in sent.items() if n.startswith(begins)}


def _without(sent: Sent, place: str) -> Sent:
    kept = [(n, text) for n, text in sent.items(multi=True) if not n.startswith(f"{place}.")]
    return MultiDict(kept)
