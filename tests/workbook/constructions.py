"""Quotes of blankets from the centre and of joined squares, in one workshop that has motifs."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from quoting.core.ground.measures import Units
from quoting.core.order.bodies import Body
from quoting.core.order.design import ColourSource, EndsBecome
from quoting.core.order.joined_squares import (
    JoinedSquares,
    JoinMethod,
    Layout,
    MotifJoin,
    Pool,
)
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import EarlierSide, Motif, MotifTiming, WeighedMotifs
from quoting.core.workshop.ranges import Ranges
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import YarnCharged
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock
from tests.examples import (
    WOOL,
    band,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
)
from tests.motif_examples import striped_centre

FELL = "fell dk"
AS_YOU_GO = "squares as you go"
WEIGHED = "squares, slip stitch, by the gram"
SEWN = "squares, sewn in two yarns"
DRAWN = "squares of a pool"
CENTRE = "from the centre"
BY_THE_GRAM = replace(sample_workshop().pricing, yarn_charged=YarnCharged.USED)

THIN = replace(sample_yarn(stock=()), name=FELL, category=3)
PLUM_TOO = (*sample_yarn().stock, Stock(colour="plum", weight_g=120))
"""A shelf from which all the plum of some squares comes."""

SUN = Motif(
    name="sun square",
    yarn=WOOL,
    counting=Counting.CLUSTERS,
    rounds=4,
    one_side_cm=12,
    earlier=EarlierSide(rounds=2, side_cm=6.4),
    weighed=WeighedMotifs(motifs=6, weight_g=58),
    timings=(
        MotifTiming(motifs=4, minutes=66),
        MotifTiming(motifs=3, minutes=47.5, hands_on=True),
    ),
)
MOON = Motif(
    name="moon square",
    yarn=WOOL,
    counting=Counting.SOLID,
    rounds=3,
    two_joined_cm=18,
    rounds_m=(1.1, 2.9, 4.4),
)
TILE = Motif(
    name="hearth tile",
    yarn=WOOL,
    counting=Counting.SOLID,
    stitch="hdc",
    rounds=5,
    one_side_cm=11,
    weighed=WeighedMotifs(motifs=3, weight_g=31),
    timings=(MotifTiming(motifs=2, minutes=41),),
)


def motif_shop(**changes: Any) -> Workshop:
    """Return the workshop with its motifs, a second yarn, and some of the minutes they take."""
    shop = sample_workshop(
        yarns=(sample_yarn(), THIN),
        swatches=(sample_swatch(),),
        motifs=(SUN, MOON, TILE),
        minutes=sample_minutes(
            rip_back=0.04,
            weave_in_end=(2.0, 2.5, 2.25),
            sew_whipstitch=(0.1, 0.14),
            lay_out=(20.0,),
        ),
        pay=replace(sample_workshop().pay, rest_allowance=0.1),
    )
    return replace(shop, **changes)


def squares(method: JoinMethod = JoinMethod.AS_YOU_GO, **changes: Any) -> JoinedSquares:
    """Return twenty sun squares in two layouts, five of them in the second."""
    body = JoinedSquares(
        motif=SUN.name,
        layouts=(
            Layout(colours=("rust", "oat", "teal", "oat")),
            Layout(colours=("plum", "plum", "moss", "oat"), count=5),
        ),
        join=MotifJoin(method=method, colour=None if method is JoinMethod.AS_YOU_GO else "oat"),
        columns=4,
        rows=5,
    )
    return replace(body, **changes)


def order_of(body: Body, *, quantity: int = 1, **changes: Any) -> Order:
    """Return an order of a body with a border of one round."""
    design = sample_design(
        **{"width_cm": 50, "height_cm": 62, "body": body, "border": (band(),)} | changes
    )
    return sample_order(design=design, quantity=quantity)


def _quote(order: Order, **shop: Any) -> Quote:
    return sample_quote(order, motif_shop(**shop))


@cache
def construction_quotes() -> dict[str, Quote]:
    """Return a quote of each way that these blankets are put together, by name."""
    in_two = {
        "cream": ColourSource(yarn=WOOL, colour="oat"),
        "rust": ColourSource(yarn=FELL, colour="rust"),
    }
    pool = replace(
        squares(JoinMethod.SINGLE_CROCHET),
        motif=TILE.name,
        layouts=(),
        pool=Pool(colours=("rust", "moss", "plum"), outer=("oat",)),
        rounds=6,
        blocked=True,
    )
    by_round = squares(
        JoinMethod.CONTINUOUS,
        motif=MOON.name,
        layouts=(
            Layout(colours=("rust", "teal", "oat"), share=2),
            Layout(colours=("teal", "rust", "oat")),
        ),
    )
    return {
        AS_YOU_GO: _quote(order_of(squares(), quantity=2)),
        WEIGHED: _quote(
            order_of(squares(JoinMethod.SLIP_STITCH), ends=EndsBecome.WORKED_OVER),
            habits=Habits(allowance=0.12),
            pricing=BY_THE_GRAM,
            yarns=(replace(sample_yarn(), stock=PLUM_TOO), THIN),
        ),
        SEWN: _quote(
            order_of(
                squares(
                    JoinMethod.WHIPSTITCH,
                    join=MotifJoin(method=JoinMethod.WHIPSTITCH, colour="rust"),
                ),
                colours=in_two,
            ),
            habits=Habits(join=Join.AT_AN_EDGE),
            ranges=Ranges(yarn=1.2, hours=1.3),
        ),
        DRAWN: _quote(order_of(pool)),
        "squares by round, last round at once": _quote(order_of(by_round)),
        "squares, braided, in inches": _quote(
            order_of(squares(JoinMethod.FLAT_BRAID), ends=EndsBecome.FRINGE),
            units=Units.INCHES,
            speaks=Vocabulary.UK,
            locale="en_US",
        ),
        CENTRE: _quote(
            order_of(striped_centre(turned=True), stitch="hdc", ends=EndsBecome.ENCLOSED)
        ),
        "from the centre by a swatch": _quote(
            order_of(striped_centre(), stitch="sc", width_cm=40, height_cm=40)
        ),
        "from the centre by a motif": _quote(
            order_of(
                striped_centre(counting=Counting.CLUSTERS, motif=SUN.name), stitch="dc", quantity=2
            )
        ),
    }


def by_other_shop(name: str, **changes: Any) -> Quote:
    """Return one of the quotes by a workshop of which some is changed."""
    quote = construction_quotes()[name]
    return sample_quote(quote.order, replace(quote.workshop, **changes))


def by_other_minutes(name: str, **changes: Any) -> Quote:
    """Return one of the quotes by a maker who takes other minutes for some of the work."""
    minutes = construction_quotes()[name].workshop.minutes
    return by_other_shop(name, minutes=replace(minutes, **changes))
