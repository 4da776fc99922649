"""What can be chosen while an order is made: colours, balls, kinds of work, lots of the shelf."""

from __future__ import annotations

from dataclasses import dataclass
from math import fsum

from quoting.core.making.log_lines import Doing
from quoting.schema.figures import NUMBER
from quoting.store.shelf import lots_on_shelf
from quoting.web.kept import book_now
from quoting.web.making.at_hand import AtHand
from quoting.web.making.sitting_form import ball_weights
from quoting.web.shop import Shop
from quoting.wording.log_words import doing_words

Pairs = list[tuple[str, str]]
"""Values of a choice, each with its words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LotOnShelf:
    """A dye lot of one of the order's colours: its name in the design, and the grams there are."""

    colour: str
    lot: str
    grams: float
    typed_grams: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What the selects of the page offer; `units` are those of each colour's line, by its name."""

    doings: Pairs
    colours: Pairs
    currencies: Pairs
    units: dict[str, Pairs]
    lots: tuple[LotOnShelf, ...]


def choices_of(hand: AtHand, shop: Shop) -> Choices:
    """Return what can be chosen for an order."""
    speech, colours = shop.speech, [colour.colour for colour in hand.quote.estimate.colours]
    balls = speech.worded("balls")
    units = {
        name: [
            *((NUMBER.show(g, shop.notation), f"{balls} of {speech.weight(g)}") for g in weights),
            ("", "g"),
        ]
        for name, weights in ball_weights(hand).items()
    }
    return Choices(
        doings=[(doing.value, doing_words(doing, hand.quote, speech)) for doing in Doing],
        colours=[(name, name) for name in colours],
        currencies=[(code, code) for code in hand.currencies],
        units=units,
        lots=tuple(_lots(hand, shop, colours)),
    )


def _lots(hand: AtHand, shop: Shop, colours: list[str]) -> list[LotOnShelf]:
    """Return the lots on the shelf that are of the order's colours, balls of one lot together."""
    found: dict[tuple[str, str], list[float]] = {}
    for lot in lots_on_shelf(book_now()):
        for name in colours:
            source = hand.sources[name]
            if (source.yarn, source.colour) == (lot.yarn, lot.colour):
                found.setdefault((name, lot.lot), []).append(lot.grams)
    return [
        LotOnShelf(
            colour=name,
            lot=lot,
            grams=fsum(grams),
            typed_grams=NUMBER.show(round(fsum(grams), 1), shop.notation),
        )
        for (name, lot), grams in found.items()
    ]
