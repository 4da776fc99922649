"""The balls of each colour: whole packs to buy, as chosen, and what comes from the shelf."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from exports.costing_workbook.prices_block import PriceRefs, PutUpRefs
from exports.sheets.cells import Ref, counted, heads, reckoned, words, yours
from exports.sheets.grid import Grid
from exports.sheets.number_formats import COUNT, TENTHS, Shapes
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought
from quoting.core.ground.money import round_money
from quoting.core.quote.quote import Quote
from quoting.wording import sold_as


@dataclass(frozen=True, slots=True, kw_only=True)
class BoughtRefs:
    """The cells of some packs: how many, and their balls, length, weight and money together."""

    packs: Ref
    price: Ref
    balls: Ref
    length: Ref
    grams: Ref
    amount: Ref


@dataclass(frozen=True, slots=True)
class BallRefs:
    """The balls of one colour; `shelf` are the lengths of those from stock."""

    bought: tuple[BoughtRefs, ...]
    shelf: tuple[Ref, ...]


def balls_block(
    grid: Grid, quote: Quote, prices: Mapping[str, PriceRefs], shapes: Shapes
) -> list[BallRefs]:
    """Write what is bought and what is taken from stock; return it by colour, in their order."""
    grid.block("To buy")
    grid.line(
        *heads("", "colour", "sold as", "packs", "balls", shapes.long_unit, "g", figures_from=3),
        *heads("price of a pack", "cost", figures_from=0),
    )
    bought = [_bought(grid, c, prices[c.source.yarn], shapes) for c in quote.estimate.colours]
    if not any(colour.choice.stock for colour in quote.estimate.colours):
        return [BallRefs(packs, ()) for packs in bought]
    grid.block("From the shelf")
    grid.line(*heads("", "colour", "dye lot", "g", shapes.long_unit, figures_from=3))
    shelf = [_shelf(grid, c, prices[c.source.yarn], shapes) for c in quote.estimate.colours]
    return [BallRefs(packs, held) for packs, held in zip(bought, shelf, strict=True)]


def _bought(
    grid: Grid, colour: ColourEstimate, prices: PriceRefs, shapes: Shapes
) -> tuple[BoughtRefs, ...]:
    return tuple(
        _packs(grid, colour.colour, some, prices.of(some.put_up), shapes)
        for some in colour.choice.bought
    )


def _packs(grid: Grid, colour: str, some: Bought, sold: PutUpRefs, shapes: Shapes) -> BoughtRefs:
    row, put_up, money = grid.next_row, some.put_up, shapes.speech.currency
    packs, balls = f"Yarn!D{row}", f"Yarn!E{row}"
    _, _, count, number, length, grams, price, amount = grid.line(
        None,
        words(colour),
        words(sold_as(put_up.weight_g, put_up.pack, shapes.speech)),
        yours(some.packs, COUNT),
        reckoned(f"{packs}*{sold.pack}", some.balls, COUNT),
        reckoned(f"{balls}*{sold.length}", some.balls * shapes.long(put_up.length_m), TENTHS),
        reckoned(f"{balls}*{sold.grams}", some.balls * put_up.weight_g, COUNT),
        reckoned(str(sold.price), put_up.price, shapes.money),
        reckoned(
            f"ROUND({packs}*Yarn!H{row},{shapes.digits})",
            round_money(some.cost, money),
            shapes.money,
        ),
    )
    return BoughtRefs(
        packs=count, price=price, balls=number, length=length, grams=grams, amount=amount
    )


def _shelf(
    grid: Grid, colour: ColourEstimate, prices: PriceRefs, shapes: Shapes
) -> tuple[Ref, ...]:
    return tuple(
        grid.line(
            None,
            words(colour.colour),
            words(ball.lot),
            counted(ball.weight_g, TENTHS),
            reckoned(
                f"Yarn!D{grid.next_row}*{prices.length_per_gram}",
                shapes.long(ball.weight_g * colour.metres_per_gram),
                TENTHS,
            ),
        )[-1]
        for ball in colour.choice.stock
    )
