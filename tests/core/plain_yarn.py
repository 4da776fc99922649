"""A yarn of a few put-ups and balls, and the choice among them, for tests of skeins."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.estimate.skeins import SkeinChoice, choose_skeins
from quoting.core.workshop.yarns import PutUp, Stock, Yarn

TAIL_M = 0.15
COLOUR = "moss"


def put_up(weight_g: float, length_m: float, price: str, pack: int = 1) -> PutUp:
    """Return a ball on sale, or a pack of them."""
    return PutUp(weight_g=weight_g, length_m=length_m, price=Decimal(price), pack=pack)


def ball(weight_g: float, lot: str = "", colour: str = COLOUR) -> Stock:
    """Return a ball in stock, of the colour chosen unless told otherwise."""
    return Stock(colour=colour, weight_g=weight_g, lot=lot)


def yarn(*sold: PutUp, stock: tuple[Stock, ...] = ()) -> Yarn:
    """Return a yarn sold in these put-ups, with these balls in stock."""
    colours = {COLOUR: "#556b2f", "rust": "#b7410e"}
    return Yarn(name="Plain", put_ups=sold, colours=colours, stock=stock)


def choose(need_m: float, wool: Yarn, *, tail_m: float = TAIL_M, mix: bool = False) -> SkeinChoice:
    """Return the balls chosen for a need in metres."""
    return choose_skeins(need_m, wool, COLOUR, tail_m=tail_m, mix_lots=mix)
