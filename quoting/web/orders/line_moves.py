"""Adding, removing, copying and moving the lines of a form, by the names of its fields alone."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from werkzeug.datastructures import MultiDict

from quoting.schema.several import is_number
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.orders.body_forms import new_lines


class Moved(NamedTuple):
    """The form as it is after a move, and the name of the field or button to go on from."""

    sent: Sent
    focus: str


@dataclass(frozen=True, slots=True)
class Move:
    """What one button asks: what to do, with which list, and with which of its lines."""

    what: str
    list_name: str
    number: int = 0


def read_move(asked: str) -> Move | None:
    """Return what a button asks: `up blanket.border.2`, `add extras`; None if it is no move."""
    what, _, place = asked.partition(" ")
    if what == "add" and place.rpartition(".")[2] in new_lines():
        return Move(what, place)
    list_name, _, number = place.rpartition(".")
    known = what in {"up", "down", "copy", "remove"} and list_name.rpartition(".")[2] in new_lines()
    return Move(what, list_name, int(number)) if known and is_number(number) else None


def make_move(move: Move, sent: Sent, colours: list[str]) -> Moved:
    """Return the form with the move made; a move that cannot be made changes nothing.

    `colours` are those that a new line may take.
    """
    numbers = line_numbers(sent).get(move.list_name, [])
    if move.what == "add":
        return _add(move.list_name, sent, numbers, colours)
    if move.number not in numbers:
        return Moved(sent, "")
    order = _reordered(move, numbers)
    renumbered = _renumber(sent, move.list_name, order)
    return Moved(renumbered, _focus(move, order))


def _reordered(move: Move, numbers: list[int]) -> list[int]:
    """Return the old numbers in their new order."""
    at, order = numbers.index(move.number), list(numbers)
    if move.what == "remove":
        del order[at]
    elif move.what == "copy":
        order.insert(at + 1, move.number)
    else:
        to = at + (-1 if move.what == "up" else 1)
        if 0 <= to < len(order):
            order[at], order[to] = order[to], order[at]
    return order


def _renumber(sent: Sent, list_name: str, order: list[int]) -> Sent:
    """Return the form with the lines of one list in that order, numbered from 1."""
    begins = f"{list_name}."
    lines: dict[str, list[tuple[str, str]]] = {}
    moved: Sent = MultiDict()
    for name, value in sent.items(multi=True):
        number, dot, rest = name.removeprefix(begins).partition(".")
        if name.startswith(begins) and dot:
            lines.setdefault(number, []).append((rest, value))
        else:
            moved.add(name, value)
    for new, old in enumerate(order, 1):
        for rest, value in lines.get(str(old), []):
            moved.add(f"{begins}{new}.{rest}", value)
    return moved


def _focus(move: Move, order: list[int]) -> str:
    if move.what == "remove":
        return f"add {move.list_name}"
    at = order.index(move.number) + (2 if move.what == "copy" else 1)
    return f"{move.what} {move.list_name}.{at}"


def _add(list_name: str, sent: Sent, numbers: list[int], colours: list[str]) -> Moved:
    added = _renumber(sent, list_name, numbers)
    line = f"{list_name}.{len(numbers) + 1}."
    new = new_lines()[list_name.rpartition(".")[2]]
    for name, value in new.items():
        is_colour = name.endswith("colour") and "yarn" not in new
        added.add(line + name, value or (_next_colour(list_name, sent, colours) * is_colour))
    return Moved(added, line + next(iter(new)))


def _next_colour(list_name: str, sent: Sent, colours: list[str]) -> str:
    """Return the colour after the last one of the list, round and round."""
    lines = [name for name in sent if _is_colour_of(name, list_name)]
    last = sent[max(lines, key=_numbers_in)] if lines else ""
    at = colours.index(last) + 1 if last in colours else 0
    return colours[at % len(colours)] if colours else ""


def _numbers_in(name: str) -> list[int]:
    return [int(part) for part in name.split(".") if is_number(part)]


def _is_colour_of(name: str, list_name: str) -> bool:
    return name.startswith(f"{list_name}.") and name.endswith(".colour")
