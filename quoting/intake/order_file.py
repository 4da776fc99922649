"""The order file: read against a workshop, and written so that it reads the same again."""

from __future__ import annotations

from pathlib import Path

import tomli_w

from quoting.core.errors import Refused
from quoting.core.order import Order, check_order
from quoting.core.stitches import Vocabulary
from quoting.core.workshop import Workshop
from quoting.intake.blankets import DESIGN, EXTRA
from quoting.intake.entries import count, day, each, text, yes_no
from quoting.intake.selling import TERMS
from quoting.intake.tables import Entries, Named, open_file, written
from quoting.intake.toml_text import load_file, load_toml

_HEAD: Entries = {
    "title": text,
    "buyer": text,
    "for_baby": yes_no,
    "quantity": count,
    "wanted_by": day,
    "deliver_to": text,
    "pays_in": text,
    "notes": text,
}
_PARTS: Entries = {
    "design": Named("blanket", DESIGN),
    "extras": each(EXTRA),
    "terms": Named("price", TERMS),
}


def read_order_file(path: Path, workshop: Workshop) -> Order:
    """Return the order in a file. Errors: as `read_order_text`, and those of `load_file`."""
    return read_order_table(load_file(path), workshop)


def read_order_text(source: str | bytes, workshop: Workshop) -> Order:
    """Return the order in a file's text.

    Errors: one refusal with every mistake, each at its place; and those of `load_toml`.
    """
    return read_order_table(load_toml(source), workshop)


def read_order_table(content: dict[str, object], workshop: Workshop) -> Order:
    """Return the order in a file's table. Errors: as `read_order_text`."""
    root = open_file(content)
    head = root.table("order")
    values = head.values(Order, _HEAD) | root.values(Order, _PARTS)
    head.done()
    root.done()
    order = root.build(Order, **values)
    notes = root.spot.notes
    try:
        check_order(order, workshop)
    except Refused as refused:
        notes.keep(refused.mistakes, terms=root.spot.terms)
    notes.done()
    return order


def write_order(order: Order, terms: Vocabulary) -> str:
    """Return the order as the text of a file, its stitches named in `terms`."""
    head = written(order, _HEAD, terms)
    parts = written(order, _PARTS, terms)
    return tomli_w.dumps({"terms": terms.value, "order": head} | parts)
