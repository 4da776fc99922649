"""What the pages are served from: the workshop, its words, its file, and today."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Protocol, cast

from flask import Flask, current_app, g

from quoting.core.order.order import Order
from quoting.core.workshop.euro_rates import EuroRates
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.reference_rates import with_reference_rates
from quoting.core.workshop.workshop import Workshop
from quoting.notation import Marks, Quantity
from quoting.places import config_folder
from quoting.schema.notation import Medium, Notation
from quoting.web.sizes.customary_sizes import Size, read_sizes
from quoting.wording import FILE_SPEECH, Speech, speech_of

Day = Callable[[], date]
"""Tells which day it is."""

SHOPS = "quoting-shops"
"""Where an application has what its workshop is asked of."""


class NoWorkshop(Exception):  # noqa: N818 - the book is still empty, and nothing went wrong
    """There is no workshop yet to work with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """One maker's workshop as the pages see it.

    `file` names the workshop file, and is blank where a book keeps it, as the version of that
    number; `borrowed` says that the measurements are the demo's, not the
    maker's; `sample` is the order that the form starts with, if any. `rates` are the reference
    rates in use, kept in `rates_file`; `typed_rates` those of the workshop file, which win.
    """

    workshop: Workshop
    speech: Speech
    marks: Marks
    file: str
    borrowed: bool
    sample: Order | None
    sizes: tuple[Size, ...]
    today: Day
    typed_rates: Mapping[str, ExchangeRate]
    rates: EuroRates | None = None
    rates_file: Path | None = None
    version: int | None = None

    @property
    def notation(self) -> Notation:
        """How the maker types into the fields of a form."""
        return Notation(
            medium=Medium.TYPED,
            terms=self.workshop.speaks,
            marks=self.marks,
            units=self.workshop.units,
            signs=tuple(self.speech.currency_signs),
        )

    def unit_of(self, quantity: Quantity) -> str:
        """Return the unit that the maker works in."""
        return self.notation.unit_of(quantity)

    def starting_with(self, sample: Order) -> Shop:
        """Return the same workshop, its form filled in with an order to begin with."""
        return replace(self, sample=sample)

    def keeping_rates_in(self, file: Path | None) -> Shop:
        """Return the same workshop, which keeps fetched rates in a file."""
        return replace(self, rates_file=file)

    def with_rates(self, rates: EuroRates | None) -> Shop:
        """Return the same workshop with those reference rates, in place of any before."""
        own = replace(self.workshop, exchange=self.typed_rates)
        return replace(self, workshop=with_reference_rates(own, rates), rates=rates)


def open_shop(
    workshop: Workshop,
    *,
    today: Day,
    file: str = "workshop.toml",
    borrowed: bool = False,
) -> Shop:
    """Return a workshop ready to be served. Errors: as `speech_of`."""
    speech = speech_of(workshop)
    return Shop(
        workshop=workshop,
        speech=speech,
        marks=speech.marks,
        file=file,
        borrowed=borrowed,
        sample=None,
        sizes=tuple(
            replace(size, name=speech.worded(size.name))
            for size in read_sizes(config_folder() / "sizes.toml")
        ),
        today=today,
        typed_rates=workshop.exchange,
    )


class Shops(Protocol):
    """What an application asks for its workshop at each request."""

    def shop(self) -> Shop | None:
        """Return the workshop as it is now, None where there is none yet."""

    def take_rates(self, rates: EuroRates) -> None:
        """Serve with other reference rates from now on."""


@dataclass(slots=True)
class OneShop:
    """A workshop that was read from a file, and stays as it is."""

    read: Shop

    def shop(self) -> Shop:
        """Return the workshop."""
        return self.read

    def take_rates(self, rates: EuroRates) -> None:
        """Serve with other reference rates from now on."""
        self.read = self.read.with_rates(rates)


def serve_shops(app: Flask, shops: Shops) -> None:
    """Have an application ask for its workshop there."""
    app.extensions[SHOPS] = shops


def shops_now() -> Shops:
    """Return what this application asks for its workshop."""
    return cast("Shops", current_app.extensions[SHOPS])


def shop_if_any() -> Shop | None:
    """Return the workshop of this request, the same from its beginning to its end."""
    if "shop" not in g:
        g.shop = None  # should the book fail, the page that tells it asks no second time
        g.shop = shops_now().shop()
    return cast("Shop | None", g.shop)


def shop_now() -> Shop:
    """Return the workshop of this request. Errors: NoWorkshop."""
    shop = shop_if_any()
    if shop is None:
        raise NoWorkshop
    return shop


def speech_now() -> Speech:
    """Return how the workshop of this request speaks, or one that is being begun, or a file."""
    begun, shop = g.get("begun_speech", FILE_SPEECH), shop_if_any()
    return cast("Speech", begun) if shop is None else shop.speech


def speak_as_begun(speech: Speech) -> None:
    """Speak for the rest of this request as a workshop does that is being begun."""
    g.begun_speech = speech


def look_again() -> None:
    """Have the workshop looked up anew, where this request has changed it."""
    g.pop("shop", None)
