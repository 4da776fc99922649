"""A price list file: a price for each size that is compared."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path

from quoting.core.resizing import Size
from quoting.intake.entries import Entry, each, money
from quoting.intake.spots import Spot
from quoting.intake.tables import Table, open_file
from quoting.intake.toml_text import load_file
from quoting.notation import FILE_MARKS, read_size

_NO_SIZE = Size(width_cm=1, height_cm=1)


def read_price_list_file(path: Path) -> Mapping[Size, Decimal]:
    """Return the price of each size in a file, in its order.

    Errors: one refusal with every mistake, each at its place (`prices.2.size`), a size given
    twice (`size-twice`) among them; and those of `load_file`.
    """
    root = open_file(load_file(path))
    entries = root.take("prices", each(_PRICED))
    root.done()
    prices: dict[Size, Decimal] = {}
    for number, (size, price) in enumerate(entries, 1):
        if size in prices:
            spot = root.spot.at("prices", None).at(str(number), None).at("size", None)
            spot.close(None, "size-twice", read=str(size))
        prices[size] = price
    root.spot.notes.done()
    return prices


def _read_priced(spot: Spot) -> tuple[Size, Decimal]:
    table = Table(spot)
    size, price = table.take("size", _SIZE), table.take("price", money)
    table.done()
    return size, price


def _read_size(spot: Spot) -> Size:
    text = spot.value
    if not isinstance(text, str):
        return spot.wrong(_NO_SIZE, "measure")
    return spot.attempt(_NO_SIZE, lambda: size_of(text))


def size_of(text: str) -> Size:
    """Return the size that a text says, with its unit. Errors: as `read_size`, and `Size`'s own."""
    width_cm, height_cm = read_size(text, FILE_MARKS)
    return Size(width_cm=width_cm, height_cm=height_cm, label=text.strip())


_SIZE = Entry(_read_size)
_PRICED = Entry(_read_priced)
