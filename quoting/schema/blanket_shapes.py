"""The shapes of a blanket: size, body, border, colours."""

from __future__ import annotations

from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.design import BorderBand, ColourSource, Corner, Design
from quoting.core.order.in_rows import InRows, Section, StopAt, Stripe
from quoting.schema.chosen import Chosen
from quoting.schema.figures import COUNT, NUMBER, SIDE
from quoting.schema.several import Named, Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import NAME, STITCH, YES_NO, Choice

_stripe = Fields(Stripe)
STRIPE = Shape(
    Stripe,
    _stripe(lambda stripe: stripe.colour, NAME, "Colour"),
    _stripe(lambda stripe: stripe.rows, COUNT, "Rows", asked=True),
    _stripe(lambda stripe: stripe.stitch, STITCH, "Stitch"),
)

_section = Fields(Section)
SECTION = Shape(
    Section,
    _section(lambda section: section.share, NUMBER, "Share of the length", usual=1.0),
    _section(lambda section: section.repeats, COUNT, "Repeats"),
    _section(lambda section: section.fitted, YES_NO, "Each stripe once, fit to the length"),
    _section(lambda section: section.stripes, Several(STRIPE), "Stripes"),
)

_rows = Fields(InRows)
IN_ROWS = Shape(
    InRows,
    _rows(lambda rows: rows.stitches, COUNT, "Stitches in a row"),
    _rows(lambda rows: rows.multiple, COUNT, "Stitch repeat: a multiple of"),
    _rows(lambda rows: rows.plus, COUNT, "plus"),
    _rows(lambda rows: rows.stop_at, Choice(StopAt), "Finish the last section"),
    _rows(lambda rows: rows.first_rows, Several(STRIPE), "First rows"),
    _rows(lambda rows: rows.last_rows, Several(STRIPE), "Last rows"),
    _rows(lambda rows: rows.sections, Several(SECTION), "Sections"),
)

SHAPES: dict[str, Shape[Any]] = {"rows": IN_ROWS}
"""The shape of each body, by the word of its construction."""

BODIES: Chosen[Body] = Chosen("construction", "Worked", SHAPES)

_band = Fields(BorderBand)
BORDER_BAND = Shape(
    BorderBand,
    _band(lambda band: band.stitch, STITCH, "Stitch"),
    _band(lambda band: band.colour, NAME, "Colour"),
    _band(lambda band: band.rounds, COUNT, "Rounds"),
    _band(lambda band: band.row_end_ratio, NUMBER, "Stitches per row end"),
    _band(lambda band: band.corner, Choice(Corner), "Corner"),
)

_source = Fields(ColourSource)
COLOUR_SOURCE = Shape(
    ColourSource,
    _source(lambda source: source.yarn, NAME, "Yarn"),
    _source(lambda source: source.colour, NAME, "Its colour there"),
)

_design = Fields(Design)
DESIGN = Shape(
    Design,
    _design(lambda design: design.width_cm, SIDE, "Width", name="width"),
    _design(lambda design: design.height_cm, SIDE, "Length", name="height"),
    _design(lambda design: design.stitch, STITCH, "Stitch or pattern"),
    _design(lambda design: design.yarn, NAME, "Yarn"),
    _design(lambda design: design.mix_lots, YES_NO, "A colour may come from several dye lots"),
    _design(
        lambda design: design.colours,
        Named(COLOUR_SOURCE, "Name in this design"),
        "Colours from another yarn",
    ),
    _design.inline(lambda design: design.body, BODIES),
    _design(lambda design: design.border, Several(BORDER_BAND), "Border"),
)
