"""Adding, removing, copying and moving the lines of a form, by the names of its fields alone."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.schema.several import is_number
from quoting.web.forms.line_changes import (
    Changed,
    arranged,
    of_list,
    put_back,
    removed_lines,
    take_out,
)
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.orders.body_forms import new_lines
from quoting.web.orders.stripe_list import as_lines

_COLOURS = ("colour", "colours.1.value", "value")
"""Ends of the names of fields that are a colour's, in a new line."""


@dataclass(frozen=True, slots=True)
class Move:
    """What one button asks: what to do, with which list, and with which of its lines."""

    what: str
    list_name: str
    number: int = 0


def read_move(asked: str) -> Move | None:
    """Return what a button asks; None if it is no move.

    Buttons ask `up blanket.border.2`, `add extras`, `back 1` for the line that was removed last.
    """
    what, _, place = asked.partition(" ")
    if what == "back":
        return Move(what, "", int(place)) if is_number(place) else None
    if what == "add" and _is_known(place):
        return Move(what, place)
    list_name, _, number = place.rpartition(".")
    known = what in {"up", "down", "copy", "remove"} and _is_known(list_name)
    return Move(what, list_name, int(number)) if known and is_number(number) else None


def _is_known(list_name: str) -> bool:
    return of_list(new_lines(), list_name) is not None


def make_move(move: Move, sent: Sent, colours: list[str]) -> Changed:
    """Return the form with the move made; a move that cannot be made changes nothing.

    `colours` are those that a new line may take.
    """
    if move.what == "back":
        return _put_back(move.number, sent)
    numbers = line_numbers(sent).get(move.list_name, [])
    if move.what == "add":
        return _add(move.list_name, sent, numbers, colours)
    if move.number not in numbers:
        return Changed(sent, "")
    if move.what == "remove":
        return take_out(sent, move.list_name, move.number)
    order = _reordered(move, numbers)
    return Changed(arranged(sent, move.list_name, order), _focus(move, order))


def _put_back(position: int, sent: Sent) -> Changed:
    """Return the form with a removed line, its list as fields where that was typed as a text."""
    for line in removed_lines(sent)[position - 1 : position]:
        sent = as_lines(sent, line.list_name)
    return put_back(sent, position)


def _reordered(move: Move, numbers: list[int]) -> list[int]:
    """Return the old numbers in their new order."""
    at, order = numbers.index(move.number), list(numbers)
    if move.what == "copy":
        order.insert(at + 1, move.number)
    else:
        to = at + (-1 if move.what == "up" else 1)
        if 0 <= to < len(order):
            order[at], order[to] = order[to], order[at]
    return order


def _focus(move: Move, order: list[int]) -> str:
    at = order.index(move.number) + (2 if move.what == "copy" else 1)
    return f"{move.what} {move.list_name}.{at}"


def _add(list_name: str, sent: Sent, numbers: list[int], colours: list[str]) -> Changed:
    added = arranged(sent, list_name, numbers)
    line = f"{list_name}.{len(numbers) + 1}."
    new = of_list(new_lines(), list_name) or {}
    for name, value in new.items():
        key = next((key for key in _COLOURS if name.endswith(key) and "yarn" not in new), "")
        added.add(line + name, value or (key and _next_colour(list_name, key, sent, colours)))
    return Changed(added, line + next(iter(new)))


def _next_colour(list_name: str, key: str, sent: Sent, colours: list[str]) -> str:
    """Return the colour after the last one of the list, round and round."""
    begins, ends = f"{list_name}.", f".{key}"
    lines = [name for name in sent if name.startswith(begins) and name.endswith(ends)]
    last = sent[max(lines, key=_numbers_in)] if lines else ""
    at = colours.index(last) + 1 if last in colours else 0
    return colours[at % len(colours)] if colours else ""


def _numbers_in(name: str) -> list[int]:
    return [int(part) for part in name.split(".") if is_number(part)]
