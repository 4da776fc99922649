"""The workshop file: everything that the maker has measured or decided."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from quoting.core.measures import Units
from quoting.core.stitches import Vocabulary
from quoting.core.working_calendar import WorkingCalendar
from quoting.core.workshop import Habits, Join, Workshop
from quoting.intake.entries import choice, count, day, each, length, number, text
from quoting.intake.measurements import (
    MINUTES,
    PATTERN,
    SWATCH,
    TIMING,
    TURNING_CHAINS_COUNT,
    YARN,
)
from quoting.intake.selling import DELIVERY, EXCHANGE, FEE, PAY, PRICING, TAX
from quoting.intake.spots import NotRead, as_written
from quoting.intake.tables import Entries, Named, Table, open_file, shape
from quoting.intake.toml_text import load_file, load_toml

_LOCALE = re.compile(r"[A-Za-z]{2,3}([_-][A-Za-z]{4})?([_-]([A-Za-z]{2}|\d{3}))?")
"""Language, script, territory: the parts of an identifier by BCP 47 that a maker needs."""


KnowsLocale = Callable[[str], bool]


def any_locale(name: str) -> bool:
    """Return whether a name has the form of a locale, spoken or not."""
    return _LOCALE.fullmatch(name) is not None


_HEAD: Entries = {
    "name": text,
    "locale": text,
    "currency": text,
    "units": choice(Units),
    "speaks": choice(Vocabulary),
    "hours_per_week": number,
}
_HABITS: Entries = {
    "carry_rows": count,
    "carry_height_cm": Named("carry_height", length),
    "tail_cm": Named("tail", length),
    "join": choice(Join),
    "confidence": number,
    "allowance": number,
    "tension": number,
    "counts_turning_chain": TURNING_CHAINS_COUNT,
}
_CALENDAR = shape(
    WorkingCalendar,
    yarn_arrives_days=count,
    drying_days=count,
    post_days=count,
    hours_promised=number,
    days_off=each(day),
)
_PARTS: Entries = {
    "yarns": each(YARN),
    "patterns": each(PATTERN),
    "swatches": each(SWATCH),
    "timings": each(TIMING),
    "minutes": MINUTES,
    "pay": PAY,
    "pricing": Named("price", PRICING),
    "fees": each(FEE),
    "tax": TAX,
    "delivery": DELIVERY,
    "calendar": _CALENDAR,
    "exchange": EXCHANGE,
}


def read_workshop_file(path: Path, knows_locale: KnowsLocale = any_locale) -> Workshop:
    """Return the workshop in a file. Errors: as `read_workshop_text`, and those of `load_file`."""
    return read_workshop_table(load_file(path), knows_locale)


def read_workshop_text(source: str | bytes, knows_locale: KnowsLocale = any_locale) -> Workshop:
    """Return the workshop in a file's text.

    `knows_locale` tells whether a locale can be spoken. Errors: one refusal with every mistake,
    each at its place; and those of `load_toml`.
    """
    return read_workshop_table(load_toml(source), knows_locale)


def read_workshop_table(
    content: dict[str, object], knows_locale: KnowsLocale = any_locale
) -> Workshop:
    """Return the workshop in a file's table. Errors: as `read_workshop_text`."""
    root = open_file(content)
    head = root.table("workshop")
    values = head.values(Workshop, _HEAD) | {"habits": _read_habits(head)}
    _check_locale(head, values, knows_locale)
    head.done()
    values |= root.values(Workshop, _PARTS)
    root.done()
    workshop = root.build(Workshop, **values)
    root.spot.notes.done()
    return workshop


def _check_locale(head: Table, values: dict[str, object], knows_locale: KnowsLocale) -> None:
    name = values.get("locale")
    if isinstance(name, str) and not isinstance(name, NotRead) and not knows_locale(name):
        head.spot.at("locale", name).close(name, "not-a-locale", read=as_written(name))


def _read_habits(head: Table) -> Habits:
    values = head.values(Habits, _HABITS)
    if "confidence" in values and "allowance" in values:
        head.spot.at("allowance", None).close(None, "confidence-or-allowance")
    return head.build(Habits, **values)
