"""Makes the filled book that stands for the newest version from then on.

Run as `python -m tests.store.filled_book` once, when a version is new; a book that was released is
never made again.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

from quoting.core.order.stage import Stage
from quoting.schema.chosen import Chosen
from quoting.schema.kind import Kind
from quoting.schema.order_shape import ORDER
from quoting.schema.several import NamedBy
from quoting.schema.shape import Shape
from quoting.schema.workshop_shape import WORKSHOP
from quoting.store.book import Book, open_book
from quoting.store.first_answers import FirstAnswers, keep_answers
from quoting.store.orders import call_off, change_stage, create_order, save_order
from quoting.store.schema_version import NEWEST
from quoting.store.shelf import lots_on_shelf, weigh_lot
from quoting.store.workshops import bring_back, save_workshop
from tests.examples import sample_workshop
from tests.store.contents import half, whole
from tests.store.moments import DESK, NOW, TABLET, later

BOOKS = Path(__file__).parent / "books"


def keys_file(version: str) -> Path:
    """Return the file that lists the keys of what a version keeps."""
    return BOOKS / f"{version}.keys"


def kept_keys() -> Iterator[str]:
    """Yield the place of every key of a workshop's and an order's record."""
    for name, shape in (("workshop", WORKSHOP), ("order", ORDER)):
        yield from sorted(_keys_of(shape, name))


def _keys_of(kind: Kind[Any], place: str) -> Iterator[str]:
    if isinstance(kind, NamedBy):
        yield from _keys_of(kind.shape, f"{place}.*")
    elif isinstance(kind, Chosen):
        for word, shape in kind.shapes.items():
            yield from _keys_of(shape, f"{place}.{word}")
    elif isinstance(kind, Shape):
        for key in kind.all_keys():
            inner = ".".join(part for part in (place, key.table, key.name) if part)
            yield inner
            yield from _keys_of(key.kind, inner)
    elif isinstance(each := getattr(kind, "each", None), Kind):
        yield from _keys_of(each, f"{place}.*")


def fill(book: Book) -> None:
    """Keep something in every table."""
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, sample_workshop(hours_per_week=9), now=later(days=1))
    bring_back(book, 1, now=later(days=2))
    (lot,) = lots_on_shelf(book)
    weigh_lot(book, lot.id, 42.5)
    for stage in Stage:
        order = create_order(book, whole(), now=NOW, writer=DESK)
        change_stage(book, order.id, stage, now=later(days=3))
    save_order(book, 2, half("Cot blanket"), revision=1, writer=DESK, now=later(days=4))
    save_order(book, 2, half("Pram blanket"), revision=1, writer=TABLET, now=later(days=4))
    call_off(book, 7, now=later(days=5))
    keep_answers(book, FirstAnswers(asks="yarn", typed={"workshop.name": ("Hollin Edge",)}))


def main() -> None:
    """Write the book and the list of its keys."""
    BOOKS.mkdir(exist_ok=True)
    path = BOOKS / f"{NEWEST}.db"
    path.unlink(missing_ok=True)
    with open_book(str(path), now=NOW) as book:
        fill(book)
    keys_file(NEWEST).write_text("".join(f"{key}\n" for key in kept_keys()), "utf-8")


if __name__ == "__main__":
    main()
