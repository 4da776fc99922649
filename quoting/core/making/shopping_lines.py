"""The lines of a shopping list: what is taken from the shelf, and what is bought."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.shared_skeins import cost_of
from quoting.core.estimate.skeins import Bought


@dataclass(frozen=True, slots=True, kw_only=True)
class ForOrder:
    """What an order, by its place among those asked for, has of a line."""

    order: int
    grams: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfLine:
    """Yarn that is taken from a lot on the shelf; `lot` is empty where it has no name."""

    yarn: str
    colour: str
    code: str
    lot: str
    portions: tuple[ForOrder, ...]

    @property
    def grams(self) -> float:
        """What is taken in all."""
        return math.fsum(portion.grams for portion in self.portions)


@dataclass(frozen=True, slots=True, kw_only=True)
class BuyLine:
    """Balls of one kind to buy of one dye lot, that of the name `lot` if it is known.

    `with_spare` are the packs with which there is a ball more than are needed.
    """

    yarn: str
    colour: str
    code: str
    lot: str = ""
    bought: tuple[Bought, ...]
    with_spare: tuple[Bought, ...]
    portions: tuple[ForOrder, ...]

    @property
    def cost(self) -> Decimal:
        """Money for the balls, unrounded."""
        return cost_of(self.bought)

    @property
    def spare_cost(self) -> Decimal:
        """What a spare ball adds; nothing where a pack brings one anyway."""
        return cost_of(self.with_spare) - self.cost


@dataclass(frozen=True, slots=True, kw_only=True)
class ShoppingList:
    """What is taken from the shelf, and what is bought, by yarn and colour.

    `there` names the colours of each order, by its place, of which nothing is needed any more.
    """

    shelf: tuple[ShelfLine, ...] = ()
    to_buy: tuple[BuyLine, ...] = ()
    there: tuple[tuple[int, str], ...] = ()

    @property
    def cost(self) -> Decimal:
        """Money for all new balls, unrounded."""
        return sum((line.cost for line in self.to_buy), Decimal(0))

    @property
    def spare_cost(self) -> Decimal:
        """What a spare ball of each line adds to it."""
        return sum((line.spare_cost for line in self.to_buy), Decimal(0))
