"""The shapes of what the maker has measured: yarns, patterns, swatches, timings, minutes."""

from __future__ import annotations

from quoting.core.workshop.motifs import EarlierSide, Motif, MotifTiming, WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.swatches import Piece, Reading, Run, Swatch
from quoting.core.workshop.timings import Minutes, Timing
from quoting.core.workshop.workshop import Pattern
from quoting.core.workshop.yarns import PutUp, Stock, Yarn
from quoting.schema.figures import COUNT, GRAMS, METRES, MONEY, NUMBER, SHARE, SIDE, WEIGHT
from quoting.schema.several import Named, OneOrMore, Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import (
    ANSWER,
    BASIC_STITCH,
    DAY,
    NAME,
    PATTERN_NAME,
    STITCH,
    TEXT,
    YES_NO,
    Choice,
)

_put_up = Fields(PutUp)
PUT_UP = Shape(
    PutUp,
    _put_up(lambda put_up: put_up.weight_g, GRAMS, "Weight of a ball", name="grams"),
    _put_up(lambda put_up: put_up.length_m, METRES, "Length of a ball", name="metres"),
    _put_up(lambda put_up: put_up.price, MONEY, "Price"),
    _put_up(lambda put_up: put_up.pack, COUNT, "for so many balls"),
)

_stock = Fields(Stock)
STOCK = Shape(
    Stock,
    _stock(lambda ball: ball.colour, NAME, "Colour"),
    _stock(lambda ball: ball.weight_g, GRAMS, "Weight", name="grams"),
    _stock(lambda ball: ball.lot, TEXT, "Dye lot"),
)

_yarn = Fields(Yarn)
YARN = Shape(
    Yarn,
    _yarn(lambda yarn: yarn.name, TEXT, "Name"),
    _yarn(lambda yarn: yarn.fibre, TEXT, "Fibre"),
    _yarn(lambda yarn: yarn.category, COUNT, "Category"),
    _yarn(lambda yarn: yarn.hook_mm, NUMBER, "Hook on the label, mm"),
    _yarn(lambda yarn: yarn.colours, Named(TEXT), "Colours"),
    _yarn(lambda yarn: yarn.put_ups, Several(PUT_UP), "How it is sold"),
    _yarn(lambda yarn: yarn.stock, Several(STOCK), "On the shelf"),
)

_pattern = Fields(Pattern)
PATTERN = Shape(
    Pattern,
    _pattern(lambda pattern: pattern.name, PATTERN_NAME, "Name"),
    _pattern(lambda pattern: pattern.like, BASIC_STITCH, "Like"),
    _pattern(lambda pattern: pattern.multiple, COUNT, "A multiple of"),
    _pattern(lambda pattern: pattern.plus, COUNT, "plus"),
    _pattern(lambda pattern: pattern.turning_chains, COUNT, "Turning chains"),
    _pattern(lambda pattern: pattern.counts_turning_chain, ANSWER, "They count as a stitch"),
    _pattern(lambda pattern: pattern.foundation_chains, COUNT, "Foundation chains besides"),
    _pattern(lambda pattern: pattern.row_repeat, COUNT, "Rows of the repeat"),
    _pattern(lambda pattern: pattern.for_buyers, TEXT, "What it looks and feels like"),
)

_reading = Fields(Reading)
READING = Shape(
    Reading,
    _reading(lambda reading: reading.stitches, NUMBER, "Stitches"),
    _reading(lambda reading: reading.width_cm, SIDE, "over a width of", name="width"),
    _reading(lambda reading: reading.rows, NUMBER, "Rows"),
    _reading(lambda reading: reading.height_cm, SIDE, "over a height of", name="height"),
)

_piece = Fields(Piece)
PIECE = Shape(
    Piece,
    _piece(lambda piece: piece.stitches, COUNT, "Stitches"),
    _piece(lambda piece: piece.rows, COUNT, "Rows"),
    _piece(lambda piece: piece.weight_g, WEIGHT, "Weight, tails off", name="weight"),
    _piece(lambda piece: piece.scale_step_g, WEIGHT, "The scale shows", name="scale_step"),
)

_run = Fields(Run)
RUN = Shape(
    Run,
    _run(lambda run: run.stitches, COUNT, "Stitches unravelled"),
    _run(lambda run: run.length_cm, SIDE, "Length", name="length"),
    _run(lambda run: run.ruler_step_cm, SIDE, "The ruler shows", name="ruler_step"),
)

_swatch = Fields(Swatch)
SWATCH = Shape(
    Swatch,
    _swatch(lambda swatch: swatch.yarn, NAME, "Yarn"),
    _swatch(lambda swatch: swatch.stitch, STITCH, "Stitch or pattern"),
    _swatch(lambda swatch: swatch.hook_mm, NUMBER, "Hook, mm"),
    _swatch(lambda swatch: swatch.day, DAY, "Day"),
    _swatch(lambda swatch: swatch.gauge, READING, "Counted in the middle, washed and dried"),
    _swatch(lambda swatch: swatch.piece, PIECE, "The whole swatch, weighed"),
    _swatch(lambda swatch: swatch.run, RUN, "A counted run, unravelled"),
    _swatch(lambda swatch: swatch.gauge_before_washing, READING, "Before washing"),
)

_timing = Fields(Timing)
TIMING = Shape(
    Timing,
    _timing(lambda timing: timing.stitch, STITCH, "Stitch or pattern"),
    _timing(lambda timing: timing.stitches, COUNT, "Stitches"),
    _timing(lambda timing: timing.minutes, NUMBER, "Minutes"),
    _timing(lambda timing: timing.rows, COUNT, "Turns in that time"),
    _timing(lambda timing: timing.hands_on, YES_NO, "The clock stopped at every pause"),
    _timing(lambda timing: timing.yarn, NAME, "Yarn"),
    _timing(lambda timing: timing.hook_mm, NUMBER, "Hook, mm"),
    _timing(lambda timing: timing.day, DAY, "Day"),
)

_weighed = Fields(WeighedMotifs)
WEIGHED = Shape(
    WeighedMotifs,
    _weighed(lambda weighed: weighed.motifs, COUNT, "Motifs on the scale"),
    _weighed(lambda weighed: weighed.weight_g, WEIGHT, "Weight, tails off", name="weight"),
    _weighed(lambda weighed: weighed.scale_step_g, WEIGHT, "The scale shows", name="scale_step"),
)

_earlier = Fields(EarlierSide)
EARLIER = Shape(
    EarlierSide,
    _earlier(lambda earlier: earlier.rounds, COUNT, "After round"),
    _earlier(lambda earlier: earlier.side_cm, SIDE, "its side was", name="side"),
)

_motif_timing = Fields(MotifTiming)
MOTIF_TIMING = Shape(
    MotifTiming,
    _motif_timing(lambda timing: timing.motifs, COUNT, "Motifs"),
    _motif_timing(lambda timing: timing.minutes, NUMBER, "Minutes"),
    _motif_timing(lambda timing: timing.hands_on, YES_NO, "The clock stopped at every pause"),
    _motif_timing(lambda timing: timing.day, DAY, "Day"),
)

_motif = Fields(Motif)
MOTIF = Shape(
    Motif,
    _motif(lambda motif: motif.name, TEXT, "Name"),
    _motif(lambda motif: motif.yarn, NAME, "Yarn"),
    _motif(lambda motif: motif.stitch, STITCH, "Stitch or pattern"),
    _motif(lambda motif: motif.counting, Choice(Counting), "Shape"),
    _motif(lambda motif: motif.rounds, COUNT, "Rounds"),
    _motif(lambda motif: motif.first_side, COUNT, "Stitches a side in round 1"),
    _motif(lambda motif: motif.side_chains, COUNT, "Chains between clusters"),
    _motif(lambda motif: motif.one_side_cm, SIDE, "Side of one", name="side"),
    _motif(lambda motif: motif.two_joined_cm, SIDE, "or two joined", name="two_joined"),
    _motif(lambda motif: motif.hook_mm, NUMBER, "Hook, mm"),
    _motif(lambda motif: motif.day, DAY, "Day"),
    _motif(lambda motif: motif.weighed, WEIGHED, "Weighed together"),
    _motif(lambda motif: motif.earlier, EARLIER, "The same one, smaller"),
    _motif(
        lambda motif: motif.rounds_m,
        OneOrMore(METRES),
        "Yarn of each round, unravelled",
        name="metres_by_round",
    ),
    _motif(lambda motif: motif.timings, Several(MOTIF_TIMING), "Timings"),
)

READINGS = OneOrMore(NUMBER)
_minutes = Fields(Minutes)
MINUTES = Shape(
    Minutes,
    _minutes(lambda minutes: minutes.turn, READINGS, "Turning a row"),
    _minutes(lambda minutes: minutes.change_colour, READINGS, "Changing colour"),
    _minutes(lambda minutes: minutes.join, READINGS, "Joining a ball"),
    _minutes(lambda minutes: minutes.weave_in_end, READINGS, "Weaving in an end"),
    _minutes(lambda minutes: minutes.start_and_finish, READINGS, "Starting and finishing"),
    _minutes(lambda minutes: minutes.wash, READINGS, "Blocking, hands on"),
    _minutes(lambda minutes: minutes.photograph, READINGS, "Photos"),
    _minutes(lambda minutes: minutes.pack, READINGS, "Packing a blanket"),
    _minutes(lambda minutes: minutes.letters, READINGS, "Messages with the buyer"),
    _minutes(lambda minutes: minutes.swatch, READINGS, "Swatching"),
    _minutes(lambda minutes: minutes.begin_round, READINGS, "Beginning and joining a round"),
    _minutes(lambda minutes: minutes.work_over_end, READINGS, "Working over an end"),
    _minutes(lambda minutes: minutes.enclose_end, READINGS, "Enclosing an end in the border"),
    _minutes(lambda minutes: minutes.fringe_end, READINGS, "Knotting an end into a fringe"),
    _minutes(lambda minutes: minutes.join_as_you_go, READINGS, "Joining an edge as you go"),
    _minutes(
        lambda minutes: minutes.join_continuous, READINGS, "Joining an edge in one last round"
    ),
    _minutes(lambda minutes: minutes.join_braid, READINGS, "Joining the loops of an edge"),
    _minutes(lambda minutes: minutes.sew_whipstitch, READINGS, "Whipstitch, a centimetre"),
    _minutes(lambda minutes: minutes.sew_mattress, READINGS, "Mattress stitch, a centimetre"),
    _minutes(lambda minutes: minutes.lay_out, READINGS, "Laying motifs out"),
    _minutes(lambda minutes: minutes.lay_out_motif, READINGS, "and for each motif"),
    _minutes(lambda minutes: minutes.block_motif, READINGS, "Blocking a motif"),
    _minutes(lambda minutes: minutes.rip_back, SHARE, "Pulling back, % of the stitching"),
)
