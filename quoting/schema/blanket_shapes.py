"""The shapes of a blanket: size, body, border, colours."""

from __future__ import annotations

from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.design import BorderBand, ColourSource, Corner, Design, EndsBecome
from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.order.in_rows import InRows, Section, StopAt, Stripe
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin, Pool
from quoting.core.workshop.rounds import Counting
from quoting.schema.chosen import Chosen
from quoting.schema.figures import COUNT, NUMBER, SIDE
from quoting.schema.several import Named, Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.table import Table
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

_round_stripe = Fields(RoundStripe)
ROUND_STRIPE = Shape(
    RoundStripe,
    _round_stripe(lambda stripe: stripe.colour, NAME, "Colour"),
    _round_stripe(lambda stripe: stripe.rounds, COUNT, "Rounds", asked=True),
)

_centre = Fields(FromCentre)
FROM_CENTRE = Shape(
    FromCentre,
    _centre(lambda centre: centre.counting, Choice(Counting), "Shape"),
    _centre(lambda centre: centre.first_side, COUNT, "Stitches a side in round 1"),
    _centre(lambda centre: centre.side_chains, COUNT, "Chains between clusters"),
    _centre(lambda centre: centre.rounds, COUNT, "Rounds"),
    _centre(lambda centre: centre.repeats, COUNT, "Repeats of the stripes"),
    _centre(lambda centre: centre.fitted, YES_NO, "Each stripe once, fit to the size"),
    _centre(lambda centre: centre.starts_on, COUNT, "Longer by so many stitches or clusters"),
    _centre(lambda centre: centre.turned, YES_NO, "Turned after each round"),
    _centre(lambda centre: centre.motif, NAME, "Worked out from the motif"),
    _centre(lambda centre: centre.stripes, Several(ROUND_STRIPE), "Stripes"),
)

_layout = Fields(Layout)
LAYOUT = Shape(
    Layout,
    _layout(lambda layout: layout.share, NUMBER, "Share of the motifs", usual=1.0),
    _layout(lambda layout: layout.count, COUNT, "How many"),
    _layout(lambda layout: layout.colours, Several(NAME), "Colours by round"),
)

_pool = Fields(Pool)
POOL = Shape(
    Pool,
    _pool(lambda pool: pool.colours, Several(NAME), "Colours to mix"),
    _pool(lambda pool: pool.outer, Several(NAME), "Last rounds"),
)

_motif_join = Fields(MotifJoin)
MOTIF_JOIN = Shape(
    MotifJoin,
    _motif_join(lambda join: join.method, Choice(JoinMethod), "How they are joined"),
    _motif_join(lambda join: join.colour, NAME, "Colour of the join"),
    _motif_join(lambda join: join.added_cm, SIDE, "Adds between two", name="added"),
    _motif_join(lambda join: join.needleful_cm, SIDE, "A needleful", name="needleful"),
)

_squares = Fields(JoinedSquares)
JOINED_SQUARES = Shape(
    JoinedSquares,
    _squares(lambda squares: squares.motif, NAME, "Motif"),
    _squares(lambda squares: squares.rounds, COUNT, "Rounds of each"),
    _squares(lambda squares: squares.columns, COUNT, "Motifs across"),
    _squares(lambda squares: squares.rows, COUNT, "Motifs down"),
    _squares(lambda squares: squares.blocked, YES_NO, "Each motif is blocked"),
    _squares(lambda squares: squares.layouts, Several(LAYOUT), "Layouts"),
    _squares(lambda squares: squares.pool, POOL, "Mixed from a pool of colours"),
    _squares(lambda squares: squares.join, MOTIF_JOIN, "Join"),
)

SHAPES: dict[str, Shape[Any]] = {
    "rows": IN_ROWS,
    "centre": FROM_CENTRE,
    "squares": JOINED_SQUARES,
}
"""The shape of each body, by the word of its construction."""

BODIES: Chosen[Body] = Chosen("construction", "Worked", SHAPES)

BLANKET = "blanket"
"""The table that a design stands in."""

CHOICE_OF_BODY = f"{BLANKET}.{BODIES.key}"
"""The field that a construction is chosen in."""


def key_of_blanket(field: str) -> str:
    """Return the key of the blanket that a field is of; empty where it is of something else."""
    table, _, rest = field.partition(".")
    return rest.partition(".")[0] if table == BLANKET else ""


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


def _goes_by_width(table: Table) -> bool:
    """Return whether a blanket's table is that of a shape that has no length of its own."""
    counting = table.glimpse("centre", "counting")
    return any(counting == shape.value for shape in Counting if shape.goes_by_width)


_design = Fields(Design)
DESIGN = Shape(
    Design,
    _design(lambda design: design.width_cm, SIDE, "Width", name="width"),
    _design(
        lambda design: design.height_cm,
        SIDE,
        "Length",
        name="height",
        else_as=lambda design: design.width_cm,
        else_where=_goes_by_width,
    ),
    _design(lambda design: design.stitch, STITCH, "Stitch or pattern"),
    _design(lambda design: design.yarn, NAME, "Yarn"),
    _design(lambda design: design.mix_lots, YES_NO, "A colour may come from several dye lots"),
    _design(lambda design: design.ends, Choice(EndsBecome), "Ends are"),
    _design(
        lambda design: design.colours,
        Named(COLOUR_SOURCE, "Name in this design"),
        "Colours from another yarn",
    ),
    _design.inline(lambda design: design.body, BODIES),
    _design(lambda design: design.border, Several(BORDER_BAND), "Border"),
)
