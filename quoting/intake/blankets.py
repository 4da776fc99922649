"""The blanket of an order file, and what goes with it."""

from __future__ import annotations

from quoting.core.design import (
    BorderBand,
    ColourSource,
    Construction,
    Corner,
    Design,
    Section,
    StopAt,
    Stripe,
)
from quoting.core.order import Extra
from quoting.intake.entries import (
    choice,
    count,
    each,
    length,
    mapping,
    metres,
    money,
    number,
    stitch,
    text,
    yes_no,
)
from quoting.intake.tables import Named, shape

STRIPE = shape(Stripe, colour=text, rows=count, stitch=stitch)

SECTION = shape(Section, share=number, repeats=count, stripes=each(STRIPE))

BORDER_BAND = shape(
    BorderBand,
    stitch=stitch,
    colour=text,
    rounds=count,
    row_end_ratio=number,
    corner=choice(Corner),
)

COLOUR_SOURCE = shape(ColourSource, yarn=text, colour=text)

DESIGN = shape(
    Design,
    width_cm=Named("width", length),
    height_cm=Named("height", length),
    stitch=stitch,
    yarn=text,
    stitches=count,
    multiple=count,
    plus=count,
    first_rows=each(STRIPE),
    last_rows=each(STRIPE),
    stop_at=choice(StopAt),
    mix_lots=yes_no,
    construction=choice(Construction),
    colours=mapping(COLOUR_SOURCE),
    sections=each(SECTION),
    border=each(BORDER_BAND),
)

EXTRA = shape(
    Extra,
    what=text,
    cost=money,
    minutes=number,
    colour=text,
    yarn_m=Named("metres", metres),
)
