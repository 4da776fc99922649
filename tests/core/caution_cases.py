"""For every caution a case in which it holds, and one in which it does not."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

from quoting.core.order.design import ColourSource, EndsBecome
from quoting.core.order.in_rows import Section
from quoting.core.order.joined_squares import Layout
from quoting.core.order.order import Order, Terms
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.motifs import WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.selling import Pay, Pricing, Target
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from quoting.core.workshop.yarns import PutUp
from tests.examples import (
    TODAY,
    WOOL,
    band,
    sample_design,
    sample_minutes,
    sample_order,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
)
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_motif,
    sample_squares,
    squares_order,
    tall_swatch,
)

Case = tuple[Order, Workshop]


def case(order: Order | None = None, **changes: Any) -> Case:
    return order or sample_order(), sample_workshop(**changes)


def given(price: str, **changes: Any) -> Case:
    order = sample_order(terms=Terms(target=Target(given=Decimal(price))))
    return case(order, **changes)


def designed(**changes: Any) -> Case:
    design = sample_design(**changes.pop("design", {}))
    return case(sample_order(design=design), **changes)


def striped(*sections: Section, **changes: Any) -> Case:
    return designed(design={"sections": sections, "first_rows": ()}, **changes)


def paid_in_euro(day: date) -> Case:
    rate = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=day)
    return case(sample_order(pays_in="EUR"), exchange={"EUR": rate})


def timed(*minutes: float, stitches: int = 500) -> Case:
    timings = tuple(Timing(stitch="hdc", stitches=stitches, minutes=m) for m in minutes)
    return case(timings=timings)


def timed_in(yarn: str, *, category: int) -> Case:
    """Return a blanket in moor aran, timed in a yarn that may be another, of some category."""
    yarns = (sample_yarn(), sample_yarn(name="tor aran", category=category, stock=()))
    return case(yarns=yarns, timings=(Timing(stitch="hdc", stitches=500, minutes=27, yarn=yarn),))


def in_moss(*timings: Timing) -> Case:
    """Return a blanket in a pattern like hdc, which is timed, with any timings of the pattern."""
    moss = Pattern(name="moss", like=Stitch.HDC)
    hdc = Timing(stitch="hdc", stitches=500, minutes=27)
    return designed(design={"stitch": "moss"}, patterns=(moss,), timings=(hdc, *timings))


def sold_in(metres: float, **changes: Any) -> Workshop:
    ball = PutUp(weight_g=metres / 2, length_m=metres, price=Decimal(1))
    return sample_workshop(yarns=(sample_yarn(put_ups=(ball,), stock=()),), **changes)


def labelled(metres: float) -> Workshop:
    """Return a workshop with balls of 200 m and of so many metres, both of 100 g."""
    balls = tuple(
        PutUp(weight_g=100, length_m=length, price=Decimal(4)) for length in (200, metres)
    )
    return sample_workshop(yarns=(sample_yarn(put_ups=balls, stock=()),))


def with_second_yarn(width_cm: float) -> Case:
    """Return rust stripes in a yarn whose stitches are so wide, beside moor aran's 0.8 cm."""
    soft = replace(sample_yarn(), name="soft", stock=())
    gauge = Reading(stitches=10, width_cm=10 * width_cm, rows=10, height_cm=9.5)
    return designed(
        design={"colours": {"rust": ColourSource(yarn="soft", colour="rust")}},
        yarns=(sample_yarn(), soft),
        swatches=(sample_swatch(), sample_swatch(yarn="soft", gauge=gauge)),
    )


def mossy(rows: int, **changes: Any) -> Case:
    """Return a blanket of so many rows of a pattern whose repeat is 4 rows."""
    moss = Pattern(name="moss stitch", like=Stitch.HDC, row_repeat=4)
    design = {
        "stitch": "moss stitch",
        "first_rows": (),
        "sections": (section("oat", repeats=rows),),
    }
    return designed(design=design, patterns=(moss,), **changes)


def bordered(stitch: str, height_cm: float) -> Case:
    """Return two rounds of a stitch that is 0.8 cm wide and so high, with chains at corners."""
    gauge = Reading(stitches=10, width_cm=8, rows=10, height_cm=10 * height_cm)
    swatches = (sample_swatch(), sample_swatch(stitch=stitch, gauge=gauge))
    return designed(design={"border": (band(stitch, rounds=2),)}, swatches=swatches)


def from_centre(*, rows: int = 9, ends: EndsBecome = EndsBecome.WOVEN_IN, **changes: Any) -> Case:
    """Return a solid piece from the centre, at 17 stitches and so many rows to 10 cm."""
    gauge = Reading(stitches=17, width_cm=10, rows=rows, height_cm=10)
    body = sample_centre(**changes.pop("body", {}))
    workshop = sample_workshop(swatches=(tall_swatch(gauge=gauge),), **changes)
    return centre_order(body=body, ends=ends), workshop


def counted_motifs(count: int) -> Case:
    """Return a blanket of 88 squares, so many of one layout and the others of the next."""
    first, second = Layout(colours=FIVE, count=count), Layout(colours=FIVE[::-1])
    return squares_order(body=sample_squares(layouts=(first, second))), motif_workshop()


def of_squares(**changes: Any) -> Case:
    """Return a blanket of squares in a motif that is changed."""
    return squares_order(), motif_workshop(sample_motif(**changes))


def fringed(order: Order) -> Case:
    """Return an order whose ends are left as fringe."""
    return case(replace(order, design=replace(order.design, ends=EndsBecome.FRINGE)))


AT_AN_EDGE = Habits(join=Join.AT_AN_EDGE)
SWATCHED = (sample_swatch(), sample_swatch(stitch="sc"))
ALL_TIMED = tuple(
    Timing(stitch=stitch, stitches=500, minutes=m)
    for stitch, m in (("hdc", 27), ("hdc", 27), ("sc", 20), ("sc", 20))
)
MINIMUM = Pricing(target=Target(margin=0.15), minimum=Decimal(60))
BABY = sample_order(for_baby=True)
GROWN_UP = sample_order(
    for_baby=False, title="Throw in moorland stripes", design=sample_design(height_cm=130)
)
TWO_ROWS = section("teal", "rust", rows=2, repeats=6)
SINGLE_ROWS = section("teal", "rust", repeats=12)
IN_CLUSTERS = {"counting": Counting.CLUSTERS}
THREE_AT_ONE_EDGE = section("teal", "rust", "oat", rows=2, repeats=4)

FINISHER = Pay(making_per_hour=Decimal(10), office_per_hour=Decimal(30))
MAKER = Pay(making_per_hour=Decimal(30), office_per_hour=Decimal(10))

CASES: dict[str, tuple[Case, Case]] = {
    "pays-under-wage": (given("150"), given("300")),
    "under-minimum": (given("40", pricing=MINIMUM), given("60", pricing=MINIMUM)),
    "no-delivery-band": (case(sample_order(deliver_to="NZ")), case()),
    "too-heavy-for-bands": (case(sample_order(quantity=9)), case()),
    "no-profit": (case(pricing=Pricing(target=Target(margin=0.0))), case()),
    "late": (
        case(sample_order(wanted_by=date(2026, 12, 14))),
        case(sample_order(wanted_by=date(2026, 12, 15))),
    ),
    "old-rate": (
        paid_in_euro(TODAY - timedelta(days=8)),
        paid_in_euro(TODAY - timedelta(days=7)),
    ),
    "rate-to-come": (paid_in_euro(TODAY + timedelta(days=1)), paid_in_euro(TODAY)),
    "rough-yarn": (case(swatches=()), case()),
    "rough-pattern": (mossy(8), mossy(8, swatches=(sample_swatch(stitch="moss stitch"),))),
    "no-category": (
        case(yarns=(sample_yarn(category=None),), swatches=()),
        case(yarns=(sample_yarn(category=None),)),
    ),
    "estimated-yarn": (case(), case(swatches=SWATCHED)),
    "one-timing": (case(), timed(27, 27)),
    "estimated-pace": (case(), case(timings=ALL_TIMED)),
    "pattern-pace": (in_moss(), in_moss(Timing(stitch="moss", stitches=500, minutes=40))),
    "other-yarn-pace": (timed_in("tor aran", category=4), timed_in(WOOL, category=4)),
    "other-thickness-pace": (timed_in("tor aran", category=6), timed_in("tor aran", category=4)),
    "odd-pace": (timed(101), timed(100)),
    "few-timings": (timed(20, 22, 30, 21), timed(20, 22, 30, 21, 22)),
    "more-timings": (timed(20, 22, 30, 21, 22), timed(25, 25, 25, 25, 25)),
    "minutes-not-given": (
        case(minutes=sample_minutes(wash=None)),
        case(minutes=sample_minutes(wash=(0.0,))),
    ),
    "many-ends": (
        striped(SINGLE_ROWS),
        striped(SINGLE_ROWS, minutes=sample_minutes(weave_in_end=(0.1,))),
    ),
    "wrong-edge": (striped(SINGLE_ROWS), striped(TWO_ROWS)),
    "yarns-tangle": (striped(THREE_AT_ONE_EDGE), striped(TWO_ROWS)),
    "long-pass": (
        (sample_order(), sold_in(8, habits=AT_AN_EDGE)),
        (sample_order(), sold_in(80, habits=AT_AN_EDGE)),
    ),
    "runs-out-late": (
        (sample_order(), sold_in(188)),
        (sample_order(), sold_in(250)),
    ),
    "count-breaks-repeat": (
        designed(design={"stitches": 51, "multiple": 4, "plus": 2}),
        designed(design={"stitches": 50, "multiple": 4, "plus": 2}),
    ),
    "rows-break-repeat": (mossy(9), mossy(8)),
    "gauges-apart": (with_second_yarn(0.85), with_second_yarn(0.84)),
    "corners-cup": (bordered("dc", 2.1), bordered("dc", 1.6)),
    "corners-ruffle": (bordered("dc", 1.2), bordered("dc", 1.6)),
    "row-ends-off": (
        designed(design={"border": (band(row_end_ratio=1.0),)}),
        designed(design={"border": (band(row_end_ratio=1.2),)}),
    ),
    "labels-apart": (
        (sample_order(), labelled(222)),
        (sample_order(), labelled(218)),
    ),
    "repeats-miss-height": (
        striped(section("teal", "rust", rows=40)),
        striped(section("teal", "rust", rows=2)),
    ),
    "rounds-cup": (from_centre(rows=7), from_centre(rows=8)),
    "rounds-ruffle": (from_centre(rows=10), from_centre(rows=9)),
    "one-size-across": (
        from_centre(body={"counting": Counting.CIRCLE}),
        from_centre(),
    ),
    "clusters-by-swatch": (
        from_centre(body=IN_CLUSTERS),
        from_centre(body=IN_CLUSTERS, motifs=(sample_motif(),)),
    ),
    "few-motifs-weighed": (
        of_squares(weighed=WeighedMotifs(motifs=4, weight_g=48)),
        of_squares(weighed=WeighedMotifs(motifs=5, weight_g=60)),
    ),
    "layout-left-out": (counted_motifs(88), counted_motifs(87)),
    "usual-minutes": (
        from_centre(),
        from_centre(minutes=sample_minutes(begin_round=(0.4,))),
    ),
    "ends-lie-within": (
        from_centre(ends=EndsBecome.FRINGE),
        from_centre(ends=EndsBecome.WORKED_OVER),
    ),
    "fringe-for-a-baby": (fringed(BABY), fringed(GROWN_UP)),
    "baby-loose-bedding": (case(BABY), case(GROWN_UP)),
    "baby-small-parts": (case(BABY), case(GROWN_UP)),
    "baby-ends": (case(BABY), case(GROWN_UP)),
}
ALWAYS = {"selling-rules", "hands"}
