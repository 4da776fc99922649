"""Changes to a workbook's inputs, each with the quote that it should give."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Any

from quoting.core.order.order import Order, Terms
from quoting.core.quote.quote import Quote
from quoting.core.workshop.motifs import MotifTiming, WeighedMotifs
from quoting.core.workshop.selling import (
    Deposit,
    Fee,
    FeeBase,
    Pay,
    Target,
)
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.yarns import PutUp
from tests.examples import (
    LARGE,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
)
from tests.workbook.constructions import (
    AS_YOU_GO,
    MOON,
    SUN,
    TILE,
    WEIGHED,
    by_other_minutes,
    by_other_shop,
)
from tests.workbook.guessed_hours import SESSION, guessed_quote
from tests.workbook.orders import ADDED, ADDED_TO_ALL, INCLUDED, at_price, priced


@dataclass(frozen=True, slots=True)
class Change:
    """Inputs of one quote's workbook, by their names, set anew; and the quote they should give."""

    quote: str
    inputs: Mapping[str, object]
    expected: Quote


def _changed(inputs: Mapping[str, object], order: Order | None = None, **shop: Any) -> Change:
    return Change("plain", inputs, sample_quote(order, sample_workshop(**shop)))


ShopChange = tuple[Mapping[str, object], Mapping[str, Any]]
"""Inputs of a workbook, and the fields of the workshop that say the same."""


def shop_changes() -> dict[str, ShopChange]:
    """Return changes of the workshop whose inputs every workbook has, by name."""
    pay = Pay(
        making_per_hour=Decimal("17.35"),
        office_per_hour=Decimal("9.99"),
        overhead_per_hour=Decimal("2.22"),
    )
    card = Fee(name="Card payment", rate=0.029, fixed=Decimal("0.30"), on=FeeBase.PRICE)
    return {
        "hourly pay": (
            {"making_pay": 17.35, "office_pay": 9.99, "overhead_per_hour": 2.22},
            {"pay": pay},
        ),
        "fee": ({"fee": (0.029, 0.3, "price")}, {"fees": (card,)}),
        "tax inside": ({"tax_registered": "yes"}, {"tax": INCLUDED}),
        "deposit of all": (
            {"deposit_share": 1},
            {"pricing": priced(deposit=Deposit(share=1.0))},
        ),
        "deposit of the yarn": (
            {"deposit_kind": "the yarn"},
            {"pricing": priced(deposit=Deposit(yarn=True))},
        ),
        "deposit of the yarn and a share": (
            {"deposit_kind": "the yarn and a share", "deposit_share": 0.25},
            {"pricing": priced(deposit=Deposit(yarn=True, share=0.25))},
        ),
        "part payment at half": (
            {"at_half_share": 0.333},
            {"pricing": priced(at_half=0.333)},
        ),
    }


def _construction_changes() -> dict[str, Change]:
    """Return changes of what a motif weighed, of its timings, and of minutes that were usual."""
    lighter = replace(SUN, weighed=WeighedMotifs(motifs=6, weight_g=55))
    slower = replace(SUN, timings=(MotifTiming(motifs=5, minutes=91), *SUN.timings[1:]))
    return {
        "weight of a motif": Change(
            WEIGHED, {"motif_measured_1": 55}, by_other_shop(WEIGHED, motifs=(lighter, MOON, TILE))
        ),
        "timing of a motif": Change(
            AS_YOU_GO,
            {f"timing of {SUN.name} in {SUN.yarn}": (5, 91)},
            by_other_shop(AS_YOU_GO, motifs=(slower, MOON, TILE)),
        ),
        "minutes that were usual": Change(
            AS_YOU_GO,
            {"laying out a motif": 0.75, "joining an edge of 15 cm as you go": 1.5},
            by_other_minutes(AS_YOU_GO, lay_out_motif=(0.75,), join_as_you_go=(1.5,)),
        ),
    }


def changes() -> dict[str, Change]:
    """Return changes to every kind of input, by name."""
    pay = sample_workshop().pay
    delivery = replace(
        sample_workshop().delivery,
        charged=Decimal("7.50"),
        paid=Decimal("6.80"),
        packaging=Decimal("2.05"),
        bands=(),
    )
    dearer = PutUp(weight_g=100, length_m=200, price=Decimal("4.99"))
    session = Timing(stitch="hdc", stitches=480, minutes=31, rows=6, hands_on=True)
    halves = {
        f"half a penny at {rate}": _changed(
            {"office_pay": float(rate)}, pay=replace(pay, office_per_hour=Decimal(rate))
        )
        for rate in ("14.02", "14.06", "14.14", "8.18", "32.82")
    }
    shared = {name: _changed(inputs, **shop) for name, (inputs, shop) in shop_changes().items()}
    return (
        halves
        | shared
        | {
            "price of a skein": _changed(
                {"ball_price_1": 4.99}, yarns=(sample_yarn(put_ups=(dearer, LARGE)),)
            ),
            "margin": _changed({"margin": 0.275}, pricing=priced(target=Target(margin=0.275))),
            "to a markup": _changed(
                {"target": "markup", "markup": 0.4}, pricing=priced(target=Target(markup=0.4))
            ),
            "to a given price": _changed(
                {"target": "given price", "given_price": 211.5}, at_price("211.50")
            ),
            "step": _changed({"round_up_to": 5}, pricing=priced(round_up_to=Decimal(5))),
            "tax added": _changed(
                {
                    "tax_registered": "yes",
                    "tax_rate": 0.07,
                    "tax_shown": "added",
                    "tax_on_delivery": "no",
                },
                tax=ADDED,
            ),
            "tax added to delivery too": _changed(
                {"tax_registered": "yes", "tax_shown": "added"}, tax=ADDED_TO_ALL
            ),
            "delivery": _changed(
                {"delivery_charged": 7.5, "delivery_paid": 6.8, "packaging": 2.05},
                delivery=delivery,
            ),
            "rush, discount, least": _changed(
                {"rush": 0.1, "discount": 0.25, "minimum": 299.99},
                sample_order(terms=Terms(rush=0.1, discount=0.25)),
                pricing=priced(minimum=Decimal("299.99")),
            ),
            "no deposit": _changed({"deposit_kind": "none"}, pricing=priced(deposit=None)),
            "share": _changed(
                {"deposit_share": 0.333}, pricing=priced(deposit=Deposit(share=0.333))
            ),
            "minutes": _changed(
                {"turn_minutes": 0.25, "weaving in an end": 4, "messages with the buyer": 70},
                minutes=sample_minutes(turn=(0.25,), weave_in_end=(4.0,), letters=(70.0,)),
            ),
            "timing": _changed(
                {"session": (480, 31, 6), "rest_allowance": 0.1, "rip_back": 0.0},
                timings=(session,),
                pay=replace(pay, rest_allowance=0.1),
            ),
            **_construction_changes(),
            "timing in another yarn": Change(
                "guessed hours",
                {"session": (540, 28.5, 3), "rip_back": 0.07},
                guessed_quote(replace(SESSION, stitches=540, minutes=28.5, rows=3), rip_back=0.07),
            ),
        }
    )
