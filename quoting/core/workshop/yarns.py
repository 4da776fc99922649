"""Yarns: how they are sold, in which colours, and what of them is on the shelf."""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.measures import LEAST_G, LEAST_YARN_M
from quoting.core.ground.place import Place, at
from quoting.core.workshop.categories import SC_IN_FOUR_INCHES

MOST_PUT_UPS = 12
"""Ways to sell one yarn."""

MOST_STOCK = 60
"""Balls of one colour in stock."""

MOST_MIXTURES = 40_000
"""Ways to take some of them, balls of one weight being alike, beside each way to buy the yarn."""

LABELS_APART = 0.10
"""How far apart in length for a gram the balls of one yarn may be before they are questioned."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PutUp:
    """One way a yarn is sold: balls of `weight_g` and `length_m`, `pack` of them for `price`."""

    weight_g: float
    length_m: float
    price: Decimal
    pack: int = 1

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("grams", self.weight_g, above=0, least=LEAST_G, most=10_000)
        checks.number("metres", self.length_m, above=0, least=LEAST_YARN_M, most=100_000)
        checks.number("price", self.price, least=0, most=1_000_000)
        checks.number("pack", self.pack, least=1, most=1000)
        checks.done()

    @property
    def exact_price_per_gram(self) -> Fraction:
        """Money for a gram, exactly, so that choices rank without a rounding between them."""
        return Fraction(self.price) / (self.pack * Fraction(repr(self.weight_g)))

    @property
    def price_per_gram(self) -> Decimal:
        """Money for a gram, to the 28 digits of a decimal."""
        exact = self.exact_price_per_gram
        return Decimal(exact.numerator) / exact.denominator


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A ball, or the rest of one, that is already in the house."""

    colour: str
    weight_g: float
    lot: str = ""

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("grams", self.weight_g, above=0, most=100_000)
        checks.text("lot", self.lot, most=80)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Yarn:
    """A yarn of the workshop. `colours` maps a colour's name to `#rrggbb` for the drawing.

    `hook_mm` is the hook that its label names.
    """

    name: str
    put_ups: tuple[PutUp, ...]
    colours: Mapping[str, str]
    category: int | None = None
    fibre: str = ""
    hook_mm: float | None = None
    stock: tuple[Stock, ...] = field(default=())

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("name", self.name)
        checks.text("fibre", self.fibre, most=200)
        checks.number("hook_mm", self.hook_mm, above=0, most=100)
        if self.category is not None and self.category not in SC_IN_FOUR_INCHES:
            checks.add("category", MistakeCode.UNKNOWN_CATEGORY, read=self.category)
        if not self.put_ups:
            checks.add("put_ups", MistakeCode.MISSING)
        elif len(self.put_ups) > MOST_PUT_UPS:
            checks.add("put_ups", MistakeCode.TOO_MANY, read=len(self.put_ups), limit=MOST_PUT_UPS)
        if not self.colours:
            checks.add("colours", MistakeCode.MISSING)
        for colour, code in self.colours.items():
            checks.name(at("colours", colour), colour)
            if not _is_colour_code(code):
                checks.add(at("colours", colour), MistakeCode.NOT_A_COLOUR_CODE, read=code)
        self._check_stock(checks)
        checks.done()

    def _check_stock(self, checks: Checks) -> None:
        for number, ball in enumerate(self.stock, 1):
            if ball.colour not in self.colours:
                checks.add(
                    at("stock", number, "colour"),
                    MistakeCode.UNKNOWN_COLOUR,
                    read=ball.colour,
                    known=tuple(self.colours),
                )
        by_colour: dict[str, Counter[float]] = {}
        for ball in self.stock:
            by_colour.setdefault(ball.colour, Counter())[ball.weight_g] += 1
        for colour, weights in by_colour.items():
            mixtures = math.prod(balls + 1 for balls in weights.values()) * len(self.put_ups)
            if weights.total() > MOST_STOCK:
                checks.add("stock", MistakeCode.TOO_MANY, read=weights.total(), limit=MOST_STOCK)
            elif mixtures > MOST_MIXTURES:
                checks.add("stock", MistakeCode.TOO_MANY_WEIGHTS, read=len(weights), colour=colour)

    @property
    def smallest(self) -> PutUp:
        """The smallest ball, by whose label the yarn is reckoned wherever it stands in the file."""
        return min(self.put_ups, key=lambda put_up: (put_up.length_m, put_up.weight_g))

    @property
    def metres_per_gram(self) -> float:
        """The length for a gram, by the label of the smallest ball."""
        return self.smallest.length_m / self.smallest.weight_g

    def length_of(self, ball: Stock) -> float:
        """Return about how many metres a ball on the shelf has."""
        return ball.weight_g * self.metres_per_gram

    @property
    def labels_agree(self) -> bool:
        """Whether all its balls have about the same length for a gram, as one yarn's do."""
        lengths = [put_up.length_m / put_up.weight_g for put_up in self.put_ups]
        return max(lengths) <= (1 + LABELS_APART) * min(lengths)

    @property
    def cheapest_per_gram(self) -> Decimal:
        """The least that a gram of this yarn costs to buy."""
        return min(put_up.price_per_gram for put_up in self.put_ups)


def yarn_named(yarns: tuple[Yarn, ...], name: str, place: Place | str) -> Yarn:
    """Return the yarn of that name.

    Errors: `unknown-yarn` at `place`, with the names there are.
    """
    for yarn in yarns:
        if yarn.name == name:
            return yarn
    raise refuse(
        place, MistakeCode.UNKNOWN_YARN, read=name, known=tuple(yarn.name for yarn in yarns)
    )


def _is_colour_code(code: str) -> bool:
    return re.fullmatch(r"#[0-9a-fA-F]{6}", code) is not None
