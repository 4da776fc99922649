"""Comparisons of many kinds, and changes to their inputs with what the program gives for them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any

from quoting.core.ground.measures import Units
from quoting.core.order.order import Extra, Order, Terms
from quoting.core.order.resizing import Size
from quoting.core.weighing.comparison import Comparison, compare_sizes
from quoting.core.workshop.selling import Deposit, Target, YarnCharged
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock
from tests.examples import (
    LARGE,
    SMALL,
    TODAY,
    sample_design,
    sample_minutes,
    sample_order,
    sample_workshop,
    sample_yarn,
)
from tests.workbook.changes import shop_changes
from tests.workbook.constructions import AS_YOU_GO, CENTRE, DRAWN, SEWN, construction_quotes
from tests.workbook.orders import ADDED, ADDED_TO_ALL, INCLUDED, THREE_FEES, in_money, priced

PRAM, COT, BED = (
    Size(width_cm=width, height_cm=height) for width, height in ((60, 75), (80, 100), (90, 120))
)
DOLL = Size(width_cm=3, height_cm=3)
EIGHT = tuple(Size(width_cm=side, height_cm=side * 1.25) for side in range(40, 120, 10))
TWO = (PRAM, COT)
HAND = Size(width_cm=50, height_cm=62)
"""The size that the tests' squares and pieces from the centre are ordered in."""


def compared(
    *sizes: Size,
    order: Order | None = None,
    workshop: Workshop | None = None,
    prices: Mapping[Size, str] | None = None,
) -> Comparison:
    """Return the sizes compared, at prices if there are any."""
    return compare_sizes(
        order or sample_order(),
        workshop or sample_workshop(),
        sizes,
        today=TODAY,
        prices=prices and {size: Decimal(price) for size, price in prices.items()},
    )


def _many() -> Comparison:
    """Return three blankets of each size, in a hurry and yet cheaper, for a markup, tax added."""
    extras = (Extra(what="Ribbon", cost=Decimal("1.115")), Extra(what="Card", cost=Decimal(0)))
    order = sample_order(quantity=3, extras=extras, terms=Terms(rush=0.125, discount=0.0333))
    shop = sample_workshop(
        pricing=priced(target=Target(markup=0.25), deposit=None, round_up_to=Decimal("0.05")),
        tax=ADDED,
        fees=THREE_FEES,
    )
    return compared(*TWO, order=order, workshop=shop)


def _by_the_gram() -> Comparison:
    """Return two blankets of each size, their yarn charged as used, of lots that may be mixed."""
    stock = (
        Stock(colour="oat", weight_g=60, lot="771"),
        Stock(colour="teal", weight_g=400, lot="12"),
        Stock(colour="rust", weight_g=35, lot="7"),
    )
    shop = sample_workshop(
        yarns=(sample_yarn(stock=stock),), pricing=priced(yarn_charged=YarnCharged.USED)
    )
    order = sample_order(quantity=2, design=sample_design(mix_lots=True))
    return compared(*TWO, order=order, workshop=shop)


def _timed_often() -> Comparison:
    """Return sizes whose stitches and ends were timed several times; of packing no minutes."""
    timings = tuple(
        Timing(stitch="hdc", stitches=500, minutes=minutes, rows=rows)
        for minutes, rows in ((27.5, 5), (29.0, 4), (26.25, 5))
    )
    ends = (2.0, 2.5, 3.25, 2.75, 2.25)
    minutes = sample_minutes(weave_in_end=ends, pack=None, rip_back=0.08)
    return compared(*TWO, workshop=sample_workshop(timings=timings, minutes=minutes))


def _called_alike() -> Comparison:
    """Return sizes of one name, that of the order's own among them, and balls sold alike."""
    twins = (SMALL, replace(SMALL, length_m=198.0, price=Decimal("4.20")), LARGE)
    shop = sample_workshop(yarns=(sample_yarn(put_ups=twins),))
    sizes = (
        replace(PRAM, label="Pram"),
        replace(BED, label="Pram"),
        replace(COT, label="Pram (2)"),
    )
    return compared(*sizes, workshop=shop)


def _of_construction(name: str) -> Comparison:
    """Return joined squares, or a piece from the centre, at its own size and a larger one."""
    quote = construction_quotes()[name]
    return compared(HAND, PRAM, order=quote.order, workshop=quote.workshop)


def comparisons() -> dict[str, Comparison]:
    """Return comparisons of every kind that a workbook has to reckon, by name."""
    taxed = sample_workshop(tax=INCLUDED, fees=THREE_FEES)
    added = sample_workshop(
        tax=ADDED_TO_ALL, fees=THREE_FEES, pricing=priced(deposit=Deposit(share=0.3))
    )
    given = sample_order(terms=Terms(target=Target(given=Decimal("199.99"))))
    small = sample_order(design=sample_design(width_cm=3, height_cm=3))
    yarn_first = sample_workshop(pricing=priced(deposit=Deposit(yarn=True)), fees=THREE_FEES)
    thrice = sample_workshop(
        pricing=priced(deposit=Deposit(yarn=True, share=0.2), at_half=0.25), fees=THREE_FEES
    )
    yen = in_money("JPY", "ja_JP", "190", "100")
    dinar = in_money("KWD", "ar_KW", "0.39", "0.250")
    asked = {size: str(60 + 35 * at) for at, size in enumerate(EIGHT)}
    named = replace(BED, label='=HYPERLINK("A1")')
    return {
        "plain": compared(*TWO),
        "one size": compared(PRAM, workshop=sample_workshop(fees=())),
        "eight at prices": compared(*EIGHT, DOLL, workshop=taxed, prices={**asked, DOLL: "9.00"}),
        "yen": compared(PRAM, COT, workshop=yen, prices={PRAM: "38000", COT: "51000"}),
        "dinar": compared(*TWO, workshop=replace(dinar, tax=INCLUDED)),
        "three of each, tax added": _many(),
        "tax added to delivery too": compared(*TWO, workshop=added),
        "in three payments": compared(*TWO, workshop=thrice),
        "own price, elsewhere": compared(PRAM, COT, order=given, workshop=taxed),
        "own price first": compared(COT, PRAM, order=given),
        "a price under the yarn's": compared(
            *TWO, workshop=yarn_first, prices={PRAM: "12.00", COT: "290.00"}
        ),
        "own size too small": compared(DOLL, *TWO, order=small),
        "by the gram, mixed lots": _by_the_gram(),
        "timed several times": _timed_often(),
        "called alike": _called_alike(),
        **{name: _of_construction(name) for name in (AS_YOU_GO, SEWN, DRAWN, CENTRE)},
        "inches": compared(COT, named, workshop=sample_workshop(units=Units.INCHES)),
    }


@dataclass(frozen=True, slots=True)
class Change:
    """Inputs of the plain comparison set anew: by name, and `columns` of each size's own."""

    expected: Comparison
    inputs: Mapping[str, object] = field(default_factory=dict)
    columns: Mapping[str, list[Decimal]] = field(default_factory=dict)


def _shop(inputs: Mapping[str, object], order: Order | None = None, **changes: Any) -> Change:
    return Change(compared(*TWO, order=order, workshop=sample_workshop(**changes)), inputs)


def changes() -> dict[str, Change]:
    """Return changes to every kind of input, by name."""
    delivery = sample_workshop().delivery
    asked = {PRAM: "211.5", COT: "333.33"}
    posted = replace(delivery, charged=Decimal("7.50"), paid=Decimal("6.80"), bands=())
    shared = {name: _shop(inputs, **shop) for name, (inputs, shop) in shop_changes().items()}
    return shared | {
        "to a markup": _shop(
            {"target": "markup", "markup": 0.4, "round_up_to": 5},
            pricing=priced(target=Target(markup=0.4), round_up_to=Decimal(5)),
        ),
        "to prices": Change(
            compared(
                *TWO,
                workshop=sample_workshop(pricing=priced(target=Target(margin=0.2))),
                prices=asked,
            ),
            {"target": "given price", "margin": 0.2},
            {"D": [Decimal(price) for price in asked.values()]},
        ),
        "tax added, no deposit": _shop(
            {
                "tax_registered": "yes",
                "tax_rate": 0.07,
                "tax_shown": "added",
                "tax_on_delivery": "no",
                "deposit_kind": "none",
            },
            tax=ADDED,
            pricing=priced(deposit=None),
        ),
        "rush, discount, least": _shop(
            {"rush": 0.1, "discount": 0.25, "minimum": 299.99, "packaging": 2.05},
            sample_order(terms=Terms(rush=0.1, discount=0.25)),
            pricing=priced(minimum=Decimal("299.99")),
            delivery=replace(delivery, packaging=Decimal("2.05")),
        ),
        "delivery": Change(
            compared(*TWO, workshop=sample_workshop(delivery=posted)),
            columns={"B": [posted.paid] * 3, "C": [posted.charged] * 3},
        ),
    }
