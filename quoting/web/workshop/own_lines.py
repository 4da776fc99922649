"""Adding, removing, moving and putting back the lines of the workshop's lists."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.workshop.rounds import Counting
from quoting.schema.several import is_number
from quoting.web.forms.line_changes import Changed, arranged, list_kind, put_back, take_out
from quoting.web.forms.sent import Sent, line_numbers

LOOKS = ("#b0a89a", "#4f7f8c", "#a65d43", "#6f7d4a", "#8a6a86", "#c9a24b", "#43566b", "#d8cfc0")
"""What new colours look like until the maker says, apart enough for stripes to be told apart."""

_YARN = {
    "name": "",
    "put_ups.1.grams": "",
    "put_ups.1.pack": "1",
    "colours.1.name": "",
    "colours.1.value": LOOKS[0],
}

NEW_LINES: Mapping[str, Mapping[str, str]] = {
    "yarns": _YARN,
    "put_ups": {"grams": "", "pack": "1"},
    "colours": {"name": "", "value": LOOKS[0]},
    "stock": {"colour": "", "grams": ""},
    "patterns": {"name": "", "multiple": "1"},
    "swatches": {"yarn": "", "stitch": ""},
    "motifs": {"name": "", "counting": Counting.CLUSTERS.value},
    "motifs.timings": {"motifs": "", "minutes": "", "hands_on": "yes"},
    "timings": {"stitch": "", "stitches": "", "hands_on": "yes"},
    "fees": {"name": "", "on": "total"},
    "bands": {"to": ""},
    "days_off": {"value": ""},
    "exchange": {"currency": ""},
    "words_in": {"language": ""},
}
"""What a new line of each list begins with, the field to go to first.

A list within another's line goes by both names where lists that are called alike begin otherwise.
"""

LINE_NAMES: Mapping[str, str] = {
    "yarns": "Yarn",
    "put_ups": "way it is sold",
    "colours": "colour",
    "stock": "ball on the shelf",
    "patterns": "Stitch pattern",
    "swatches": "Swatch",
    "motifs": "Motif",
    "timings": "Timing",
    "fees": "Fee",
    "bands": "Delivery charge",
    "days_off": "Day off",
    "exchange": "Rate",
    "words_in": "Words in another language",
}
"""What a line of each list is called."""


def change_lines(asked: str, sent: Sent) -> Changed | None:
    """Return the form with its lines changed; None where a button asks for something else.

    Buttons ask `add yarns.2.colours`, `remove fees.1`, `up timings.3`, `down timings.3`,
    `back 1`. What cannot be done changes nothing.
    """
    what, _, place = asked.partition(" ")
    if what == "back":
        return put_back(sent, int(place)) if is_number(place) else None
    if what == "add":
        return _add(place, sent) if _new_line(place) else None
    list_name, _, number = place.rpartition(".")
    if what not in {"remove", "up", "down"} or not _new_line(list_name):
        return None
    return _move(what, list_name, int(number), sent) if is_number(number) else None


def _new_line(list_name: str) -> Mapping[str, str]:
    """Return what a new line of a list begins with; nothing, where there is no such list."""
    tables = ".".join(part for part in list_name.split(".") if not is_number(part))
    return NEW_LINES.get(tables) or NEW_LINES.get(list_kind(list_name), {})


def _add(list_name: str, sent: Sent) -> Changed:
    numbers = line_numbers(sent).get(list_name, [])
    added = arranged(sent, list_name, numbers)
    new = _new_line(list_name)
    line = f"{list_name}.{len(numbers) + 1}."
    for name, text in new.items():
        added[line + name] = _new_look(sent) if text == LOOKS[0] else text
    return Changed(added, line + next(iter(new)))


def _new_look(sent: Sent) -> str:
    """Return the look that fewest colours of the form have, the first of several."""
    taken = list(sent.values())
    return min(LOOKS, key=taken.count)


def _move(what: str, list_name: str, number: int, sent: Sent) -> Changed:
    order = list(line_numbers(sent).get(list_name, []))
    if number not in order:
        return Changed(sent, "")
    if what == "remove":
        return take_out(sent, list_name, number)
    at = order.index(number)
    to = min(max(0, at + (-1 if what == "up" else 1)), len(order) - 1)
    order.insert(to, order.pop(at))
    return Changed(arranged(sent, list_name, order), f"{what} {list_name}.{to + 1}")
