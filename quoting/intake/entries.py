"""The kinds of entry that a file has: how each is read from it and written to it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from enum import StrEnum
from types import MappingProxyType
from typing import Generic, TypeVar

from quoting.core.stitches import Stitch, Vocabulary, read_stitch, stitch_name
from quoting.intake.spots import NOT_READ, NotRead, Spot, as_written
from quoting.notation import (
    FILE_MARKS,
    LENGTH,
    MASS,
    YARN_LENGTH,
    Quantity,
    read_measure,
    read_money,
    write_measure,
    write_number,
)

T = TypeVar("T")
E = TypeVar("E", bound=StrEnum)

MOST_INTEGER = 10**15
"""Integers under it are exact as floats too."""

MOST_ITEMS = 1_000
"""A longer list, or table of names, is not looked into."""


@dataclass(frozen=True, slots=True)
class Entry(Generic[T]):
    """How one kind of entry is read, always to a value, and written in a vocabulary."""

    read: Callable[[Spot], T]
    write: Callable[[T, Vocabulary], object] = lambda value, _: value


def _read_text(spot: Spot) -> str:
    return spot.value if isinstance(spot.value, str) else spot.wrong(NOT_READ, "text")


def _read_count(spot: Spot) -> int:
    if isinstance(spot.value, bool) or not isinstance(spot.value, int):
        return spot.wrong(1, "whole-number")
    if abs(spot.value) >= MOST_INTEGER:
        return spot.close(1, "too-many-digits", read=as_written(spot.value), limit=15)
    return spot.value


def _read_number(spot: Spot) -> float:
    if isinstance(spot.value, bool) or not isinstance(spot.value, int | Decimal):
        return spot.wrong(1.0, "number")
    if isinstance(spot.value, int):
        return float(_read_count(spot))
    # Compared and not rounded: the longest exponents are outside what decimals are reckoned in.
    if not spot.value.is_finite() or spot.value.copy_abs() > MOST_INTEGER:
        return spot.close(1.0, "not-finite", read=as_written(spot.value))
    return float(spot.value)


def _read_yes_no(spot: Spot) -> bool:
    return spot.value if isinstance(spot.value, bool) else spot.wrong(False, "yes-or-no")  # noqa: FBT003


def _read_day(spot: Spot) -> date:
    is_day = isinstance(spot.value, date) and not isinstance(spot.value, datetime)
    return spot.value if is_day else spot.wrong(date.min, "date")  # type: ignore[return-value]


def _read_money(spot: Spot) -> Decimal:
    if not isinstance(spot.value, str):
        return spot.wrong(Decimal(1), "money-text")
    text = spot.value
    return spot.attempt(Decimal(1), lambda: read_money(text, FILE_MARKS))


def _read_stitch(spot: Spot) -> str:
    name = _read_text(spot)
    if isinstance(name, NotRead):
        return name
    return spot.attempt(NOT_READ, lambda: str(read_stitch(name, spot.terms) or name))


def _write_stitch(name: str, terms: Vocabulary) -> str:
    return stitch_name(Stitch(name), terms) if name in set(Stitch) else name


def _is_number(value: object) -> bool:
    return isinstance(value, int | Decimal) and not isinstance(value, bool)


def measure(quantity: Quantity) -> Entry[float]:
    """Return the entry of a measure: text with a unit, in the quantity's inside unit."""

    def read(spot: Spot) -> float:
        text = spot.value
        if _is_number(text):
            read = as_written(text)
            facts = {"read": read, "quoted": f'"{read} {quantity.base}"'}
            return spot.close(1.0, "missing-unit", **facts, known=quantity.units)
        if not isinstance(text, str):
            return spot.wrong(1.0, "measure")
        return spot.attempt(1.0, lambda: read_measure(text, FILE_MARKS, quantity))

    return Entry(read, lambda value, _: write_measure(value, FILE_MARKS, quantity))


def amount(quantity: Quantity) -> Entry[float]:
    """Return the entry whose key names its unit: a number of it, or a measure in any unit."""
    measured = measure(quantity)

    def read(spot: Spot) -> float:
        return number.read(spot) if _is_number(spot.value) else measured.read(spot)

    return Entry(read)


def choice(kind: type[E]) -> Entry[E]:
    """Return the entry of one of a closed set of words."""
    known = tuple(item.value for item in kind)

    def read(spot: Spot) -> E:
        word, stand_in = _read_text(spot), next(iter(kind))
        if word in known:
            return kind(word)
        return spot.close(stand_in, "not-one-of", read=as_written(word), known=known)

    return Entry(read, lambda value, _: value.value)


def each(entry: Entry[T]) -> Entry[tuple[T, ...]]:
    """Return the entry of a list, each item of one kind; their places are counted from 1."""

    def read(spot: Spot) -> tuple[T, ...]:
        items = spot.value if isinstance(spot.value, list) else spot.wrong([], "list")
        if len(items) > MOST_ITEMS:
            return spot.close((), "too-many", read=len(items), limit=MOST_ITEMS)
        return tuple(entry.read(spot.at(nr, item)) for nr, item in enumerate(items, 1))

    return Entry(read, lambda values, terms: [entry.write(value, terms) for value in values])


def mapping(entry: Entry[T]) -> Entry[Mapping[str, T]]:
    """Return the entry of a table whose keys are the maker's own names."""

    def read(spot: Spot) -> Mapping[str, T]:
        items = spot.value if isinstance(spot.value, dict) else spot.wrong({}, "table")
        if len(items) > MOST_ITEMS:
            return spot.close(MappingProxyType({}), "too-many", read=len(items), limit=MOST_ITEMS)
        values = {name: entry.read(spot.at(name, item)) for name, item in items.items()}
        return with_names(spot, values)

    return Entry(
        read,
        lambda values, terms: {name: entry.write(value, terms) for name, value in values.items()},
    )


def with_names(spot: Spot, values: Mapping[str, T]) -> Mapping[str, T]:
    """Return a table of the maker's own names; a key that is none is noted and left out."""
    for name in values:
        if not name.strip():
            spot.at(name, None).close(None, "empty-key")
    return MappingProxyType({name: value for name, value in values.items() if name.strip()})


def one_or_more(entry: Entry[T]) -> Entry[tuple[T, ...]]:
    """Return the entry of one figure that was set, or a list of several that were measured."""
    several = each(entry)

    def read(spot: Spot) -> tuple[T, ...]:
        return several.read(spot) if isinstance(spot.value, list) else (entry.read(spot),)

    return Entry(read, several.write)


text: Entry[str] = Entry(_read_text)
count: Entry[int] = Entry(_read_count)
number: Entry[float] = Entry(_read_number)
yes_no: Entry[bool] = Entry(_read_yes_no)
day: Entry[date] = Entry(_read_day)
money: Entry[Decimal] = Entry(_read_money, lambda value, _: write_number(value, FILE_MARKS))
stitch: Entry[str] = Entry(_read_stitch, _write_stitch)
length = measure(LENGTH)
weight = measure(MASS)
grams = amount(MASS)
metres = amount(YARN_LENGTH)
