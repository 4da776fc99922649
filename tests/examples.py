"""Sample orders and workshops for the tests, all of one invented scenario.

Each function returns a whole value; keywords replace single fields of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields, replace
from datetime import date
from decimal import Decimal
from typing import Any

from quoting.core.order.design import BorderBand, ColourSource, Design
from quoting.core.order.in_rows import InRows, Section, Stripe
from quoting.core.order.order import Extra, Order
from quoting.core.plan.border import Edging, Rim, RowEnds, StitchesAlong
from quoting.core.plan.gauge import Gauge, Sureness
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    Pay,
    Pricing,
    Target,
    Tax,
)
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Piece, Reading, Swatch
from quoting.core.workshop.timings import Minutes, Timing
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp, Stock, Yarn

TODAY = date(2026, 11, 25)
WOOL = "moor aran"
COLOURS = {
    "oat": "#d9c9a3",
    "teal": "#1f6f78",
    "rust": "#a8512c",
    "plum": "#5b2a4a",
    "moss": "#6b7a3a",
    "slate": "#4a5560",
}
SMALL = PutUp(weight_g=100, length_m=200, price=Decimal("4.60"))
LARGE = PutUp(weight_g=400, length_m=800, price=Decimal("17.00"))


def sample_yarn(**changes: Any) -> Yarn:
    """Return the wool of the scenario, with a part ball of oat on the shelf."""
    wool = Yarn(
        name=WOOL,
        fibre="100 % wool",
        category=4,
        colours=COLOURS,
        put_ups=(SMALL, LARGE),
        stock=(Stock(colour="oat", weight_g=60, lot="771"),),
    )
    return replace(wool, **changes)


def sample_swatch(**changes: Any) -> Swatch:
    """Return the swatch of half double crochet: a stitch 0.8 cm wide, a row 0.95 cm high."""
    swatch = Swatch(
        yarn=WOOL,
        stitch="hdc",
        hook_mm=5.0,
        gauge=Reading(stitches=16, width_cm=12.8, rows=12, height_cm=11.4),
        piece=Piece(stitches=24, rows=20, weight_g=25),
    )
    return replace(swatch, **changes)


def sample_minutes(**changes: Any) -> Minutes:
    """Return what everything but the stitches takes."""
    minutes = Minutes(
        turn=(0.1,),
        change_colour=(0.5,),
        join=(1.5,),
        weave_in_end=(2.5,),
        start_and_finish=(20.0,),
        wash=(20.0,),
        photograph=(15.0,),
        pack=(15.0,),
        letters=(45.0,),
        swatch=(0.0,),
        rip_back=0.0,
    )
    return replace(minutes, **changes)


def sample_workshop(**changes: Any) -> Workshop:
    """Return the workshop of the scenario."""
    workshop = Workshop(
        name="Ottermoor Blankets",
        locale="en_GB",
        currency="GBP",
        hours_per_week=12,
        yarns=(sample_yarn(),),
        swatches=(sample_swatch(),),
        timings=(Timing(stitch="hdc", stitches=500, minutes=27.5, rows=5, hands_on=True),),
        minutes=sample_minutes(),
        pay=Pay(
            making_per_hour=Decimal("14.00"),
            office_per_hour=Decimal("14.00"),
            overhead_per_hour=Decimal("1.80"),
        ),
        pricing=Pricing(
            target=Target(margin=0.15),
            round_up_to=Decimal("1.00"),
            minimum=Decimal("60.00"),
            valid_days=21,
            deposit=Deposit(share=0.5),
        ),
        fees=(Fee(name="Card payment", rate=0.015, fixed=Decimal("0.20")),),
        tax=Tax(rate=0.2),
        delivery=Delivery(
            charged=Decimal("5.00"),
            paid=Decimal("4.45"),
            packaging=Decimal("1.10"),
            bands=(
                DeliveryBand(to="GB", up_to_g=2000, charged=Decimal("5.00"), paid=Decimal("4.45")),
            ),
        ),
        calendar=WorkingCalendar(
            yarn_arrives_days=5,
            drying_days=2,
            post_days=3,
            days_off=(date(2026, 12, 24), date(2026, 12, 25)),
        ),
    )
    return replace(workshop, **changes)


def stripes(*colours: str, rows: int = 1) -> tuple[Stripe, ...]:
    """Return one stripe of so many rows in each colour."""
    return tuple(Stripe(colour=colour, rows=rows) for colour in colours)


def section(*colours: str, rows: int = 1, **changes: Any) -> Section:
    """Return a section of stripes of so many rows each."""
    return Section(stripes=stripes(*colours, rows=rows), **changes)


def band(stitch: str = "sc", colour: str = "oat", **changes: Any) -> BorderBand:
    """Return a border of one round of single crochet, unless told otherwise."""
    return replace(BorderBand(stitch=stitch, colour=colour), **changes)


def edging(gauge: Gauge, *, multiple: int = 1, plus: int = 0, **changes: Any) -> Edging:
    """Return a border of one round in a gauge's stitch, unless told otherwise, as it is worked."""
    asked = band(gauge.stitch, **changes)
    return Edging(band=asked, gauge=gauge, multiple=multiple, plus=plus)


def rim(*, first_row: int, last_row: int, row_gauges: Sequence[Gauge]) -> Rim:
    """Return what a border of a body in rows is worked along."""
    ends = RowEnds(row_gauges)
    last = StitchesAlong(last_row, row_gauges[-1])
    return (last, ends, StitchesAlong(first_row, row_gauges[0]), ends)


def sample_design(**changes: Any) -> Design:
    """Return the cot blanket: three colours, row by row, and one round of border.

    Changes of its rows go into its body.
    """
    design = Design(
        width_cm=80,
        height_cm=100,
        stitch="hdc",
        yarn=WOOL,
        body=InRows(first_rows=stripes("oat"), sections=(section("teal", "rust", "oat", share=1),)),
        border=(band(),),
        colours={"cream": ColourSource(yarn=WOOL, colour="oat")},
    )
    return changed_design(design, **changes)


def changed_design(design: Design, **changes: Any) -> Design:
    """Return a design with other fields, those of its rows among them."""
    names = {item.name for item in fields(InRows)}
    of_rows = {name: change for name, change in changes.items() if name in names}
    others = {name: change for name, change in changes.items() if name not in names}
    if of_rows:
        others["body"] = replace(rows_of(design), **of_rows)
    return replace(design, **others)


def rows_of(design: Design) -> InRows:
    """Return the body of a design that is worked in rows."""
    assert isinstance(design.body, InRows)
    return design.body


def sample_order(*, design: Design | None = None, **changes: Any) -> Order:
    """Return the order of the cot blanket, or of another design."""
    order = Order(
        title="Cot blanket in moorland stripes",
        buyer="Rosalind Quill",
        for_baby=True,
        wanted_by=date(2027, 3, 20),
        deliver_to="GB",
        notes="No wool: allergy",
        design=design or sample_design(),
        extras=(Extra(what="Gift box", cost=Decimal("3.20"), minutes=5),),
    )
    return replace(order, **changes)


def sample_quote(order: Order | None = None, workshop: Workshop | None = None) -> Quote:
    """Return the quote given today of an order, the cot blanket unless told otherwise."""
    return quote_order(order or sample_order(), workshop or sample_workshop(), today=TODAY)


def plain_gauge(kind: Stitch, width_cm: float, height_cm: float, **changes: Any) -> Gauge:
    """Return a measured gauge of a basic stitch."""
    gauge = Gauge(
        stitch=kind.value,
        kind=kind,
        width_cm=width_cm,
        height_cm=height_cm,
        yarn_m=0.06,
        sureness=Sureness.MEASURED,
        basis=f"{WOOL}/{kind.value}",
        basis_error=0.0,
    )
    return replace(gauge, **changes)
