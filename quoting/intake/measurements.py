"""What a workshop file says of yarns, patterns, swatches and the clock."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from quoting.core.errors import refuse
from quoting.core.stitches import Stitch, Vocabulary, read_stitch, stitch_names
from quoting.core.swatch import Piece, Reading, Run, Swatch
from quoting.core.timing import Minutes, Timing
from quoting.core.workshop import Pattern
from quoting.core.yarns import PutUp, Stock, Yarn
from quoting.intake.entries import (
    Entry,
    count,
    each,
    grams,
    length,
    mapping,
    metres,
    money,
    number,
    one_or_more,
    stitch,
    text,
    weight,
    yes_no,
)
from quoting.intake.spots import NOT_READ, NotRead, Spot, nearest
from quoting.intake.tables import Named, shape
from quoting.notation.marks import shown

PUT_UP = shape(
    PutUp,
    weight_g=Named("grams", grams),
    length_m=Named("metres", metres),
    price=money,
    pack=count,
)
STOCK = shape(Stock, colour=text, weight_g=Named("grams", grams), lot=text)
YARN = shape(
    Yarn,
    name=text,
    fibre=text,
    category=count,
    colours=mapping(text),
    put_ups=each(PUT_UP),
    stock=each(STOCK),
)


def _basic_stitch(name: str, spot: Spot) -> Stitch:
    """Return the basic stitch of that name.

    Errors: `other-vocabulary`, `not-one-of`.
    """
    stitch_named = read_stitch(name, spot.terms)
    if stitch_named is not None:
        return stitch_named
    known = tuple(stitch_names(spot.terms))
    raise refuse("", "not-one-of", read=shown(name), known=known, nearest=nearest(name, known))


def _read_basic(spot: Spot) -> Stitch:
    name = text.read(spot)
    if isinstance(name, NotRead):
        return Stitch.SC
    return spot.attempt(Stitch.SC, lambda: _basic_stitch(name, spot))


def _read_own_name(spot: Spot) -> str:
    """Return a pattern's name, which no vocabulary has for a stitch."""
    name = text.read(spot)
    taken = (stitch_names(vocabulary) for vocabulary in Vocabulary)
    if any(name in names for names in taken):
        return spot.close(NOT_READ, "basic-stitch-name", read=name)
    return name


def _read_turning_chains(spot: Spot) -> Mapping[Stitch, bool]:
    counts = mapping(yes_no).read(spot)
    named = {name: spot.at(name, name) for name in counts}
    return MappingProxyType({_read_basic(named[name]): counts[name] for name in counts})


BASIC_STITCH = Entry(_read_basic)
TURNING_CHAINS_COUNT = Entry(_read_turning_chains)

PATTERN = shape(
    Pattern,
    name=Entry(_read_own_name),
    like=BASIC_STITCH,
    multiple=count,
    plus=count,
    turning_chains=count,
    counts_turning_chain=yes_no,
    foundation_chains=count,
    row_repeat=count,
)
READING = shape(
    Reading,
    stitches=number,
    width_cm=Named("width", length),
    rows=number,
    height_cm=Named("height", length),
)
PIECE = shape(
    Piece,
    stitches=count,
    rows=count,
    weight_g=Named("weight", weight),
    scale_step_g=Named("scale_step", weight),
)
RUN = shape(
    Run,
    stitches=count,
    length_cm=Named("length", length),
    ruler_step_cm=Named("ruler_step", length),
)
SWATCH = shape(
    Swatch,
    yarn=text,
    stitch=stitch,
    gauge=READING,
    piece=PIECE,
    run=RUN,
    hook_mm=number,
    gauge_before_washing=READING,
)
TIMING = shape(
    Timing,
    stitch=stitch,
    stitches=count,
    minutes=number,
    rows=count,
    hands_on=yes_no,
    yarn=text,
    hook_mm=number,
)

_MINUTES = one_or_more(number)
MINUTES = shape(
    Minutes,
    turn=_MINUTES,
    change_colour=_MINUTES,
    join=_MINUTES,
    weave_in_end=_MINUTES,
    start_and_finish=_MINUTES,
    wash=_MINUTES,
    photograph=_MINUTES,
    pack=_MINUTES,
    letters=_MINUTES,
    swatch=_MINUTES,
    rip_back=number,
)
