"""The maker's files: an order, a workshop, a price list, read and written whole."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import tomli_w

from quoting.core.order.order import Order
from quoting.core.order.resizing import Size
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.files.toml_text import load_file, load_toml
from quoting.schema.notation import FILE
from quoting.schema.order_shape import ORDER
from quoting.schema.price_list import read_price_list
from quoting.schema.reading import KnowsLocale, read_order, read_workshop
from quoting.schema.workshop_shape import WORKSHOP

_LOCALE = re.compile(r"[A-Za-z]{2,3}([_-][A-Za-z]{4})?([_-]([A-Za-z]{2}|\d{3}))?")
"""Language, script, territory: the parts of an identifier by BCP 47 that a maker needs."""


def any_locale(name: str) -> bool:
    """Return whether a name has the form of a locale, spoken or not."""
    return _LOCALE.fullmatch(name) is not None


def load_order(path: Path, workshop: Workshop) -> Order:
    """Return the order in a file. Errors: as `load_order_text`, and those of `load_file`."""
    return read_order(load_file(path), workshop)


def load_order_text(source: str | bytes, workshop: Workshop) -> Order:
    """Return the order in a file's text.

    Errors: one refusal with every mistake, each at its place; and those of `load_toml`.
    """
    return read_order(load_toml(source), workshop)


def order_text(order: Order, terms: Vocabulary) -> str:
    """Return an order as the text of a file, its stitches named in `terms`."""
    return _toml(ORDER.write(order, replace(FILE, terms=terms)), terms)


def load_workshop(path: Path, knows_locale: KnowsLocale = any_locale) -> Workshop:
    """Return the workshop in a file. Errors: as `load_workshop_text`, and those of `load_file`."""
    return read_workshop(load_file(path), knows_locale)


def load_workshop_text(source: str | bytes, knows_locale: KnowsLocale = any_locale) -> Workshop:
    """Return the workshop in a file's text.

    `knows_locale` tells whether a locale can be spoken. Errors: one refusal with every mistake,
    each at its place; and those of `load_toml`.
    """
    return read_workshop(load_toml(source), knows_locale)


def workshop_text(workshop: Workshop, terms: Vocabulary) -> str:
    """Return a workshop as the text of a file, its stitches named in `terms`."""
    return _toml(WORKSHOP.write(workshop, replace(FILE, terms=terms)), terms)


def load_price_list(path: Path) -> Mapping[Size, Decimal]:
    """Return the prices in a file. Errors: as `read_price_list`, and those of `load_file`."""
    return read_price_list(load_file(path))


def _toml(table: Mapping[str, object], terms: Vocabulary) -> str:
    return tomli_w.dumps({"terms": terms.value, **table})
