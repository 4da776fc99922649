"""What the pages are served from: the workshop, its words, its file, and today."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import cast

from flask import current_app

from quoting.core.order.order import Order
from quoting.core.workshop.euro_rates import EuroRates
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.reference_rates import with_reference_rates
from quoting.core.workshop.workshop import Workshop
from quoting.notation import Marks, Quantity
from quoting.places import config_folder
from quoting.schema.notation import Medium, Notation
from quoting.web.sizes.customary_sizes import Size, read_sizes
from quoting.wording import Speech, speech_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Shop:
    """One maker's workshop as the pages see it.

    `file` names the workshop file; `borrowed` says that the measurements are the demo's, not the
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
    today: Callable[[], date]
    typed_rates: Mapping[str, ExchangeRate]
    rates: EuroRates | None = None
    rates_file: Path | None = None

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

    def keeping_rates_in(self, file: Path) -> Shop:
        """Return the same workshop, which keeps fetched rates in a file."""
        return replace(self, rates_file=file)

    def with_rates(self, rates: EuroRates | None) -> Shop:
        """Return the same workshop with those reference rates, in place of any before."""
        own = replace(self.workshop, exchange=self.typed_rates)
        return replace(self, workshop=with_reference_rates(own, rates), rates=rates)


def open_shop(
    workshop: Workshop,
    *,
    today: Callable[[], date],
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
        sizes=read_sizes(config_folder() / "sizes.toml"),
        today=today,
        typed_rates=workshop.exchange,
    )


def shop_now() -> Shop:
    """Return the workshop that this application serves."""
    return cast("Shop", current_app.config["SHOP"])


def change_shop(shop: Shop) -> None:
    """Serve from now on what `shop` says, in every later request."""
    current_app.config["SHOP"] = shop
