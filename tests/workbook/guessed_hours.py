"""An order whose hours rest on timings in other yarns and of other stitches."""

from __future__ import annotations

from dataclasses import replace

from quoting.core.order.design import ColourSource
from quoting.core.order.in_rows import Stripe
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern
from tests.examples import (
    WOOL,
    band,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
    section,
)

TOR, CHENILLE = "tor aran", "fen chenille"
YARNS = (
    sample_yarn(),
    sample_yarn(name=TOR, stock=()),
    sample_yarn(name=CHENILLE, category=6, stock=()),
)
PATTERNS = (Pattern(name="bobble", like=Stitch.DC), Pattern(name="moss", like=Stitch.SC))
SESSION = Timing(stitch="hdc", stitches=510, minutes=29.0, rows=4, yarn=WOOL)
TIMINGS = (
    SESSION,
    replace(SESSION, stitches=490, minutes=25.5, hands_on=True),
    Timing(stitch="bobble", stitches=200, minutes=31.0, yarn=TOR),
)
MINUTES = sample_minutes(turn=(0.1, 0.14), wash=None, letters=None)


def guessed_order() -> Order:
    """Return a blanket in three yarns, two patterns and a border, most of it never timed."""
    striped = (
        Stripe(colour="teal", rows=2),
        Stripe(colour="rust", rows=3),
        Stripe(colour="plum", rows=2, stitch="bobble"),
        Stripe(colour="rust", rows=1, stitch="moss"),
    )
    design = sample_design(
        width_cm=60,
        height_cm=75,
        sections=(replace(section("teal"), stripes=striped),),
        border=(band(), band("dc", "rust")),
        colours={
            "rust": ColourSource(yarn=CHENILLE, colour="rust"),
            "plum": ColourSource(yarn=TOR, colour="plum"),
        },
    )
    return sample_order(design=design)


def guessed_quote(first: Timing = SESSION, rip_back: float = 0.04) -> Quote:
    """Return its quote, with the first session and the ripping back that the maker has."""
    shop = sample_workshop(
        yarns=YARNS,
        patterns=PATTERNS,
        timings=(first, *TIMINGS[1:]),
        minutes=replace(MINUTES, rip_back=rip_back),
    )
    return sample_quote(guessed_order(), shop)


def one_row_quote() -> Quote:
    """Return the quote of a strip of one row: nothing is turned in it, but in the session."""
    design = sample_design(
        width_cm=60, height_cm=1, sections=(section("oat"),), first_rows=(), border=()
    )
    return sample_quote(sample_order(design=design))
