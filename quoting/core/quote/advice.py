"""What the maker and the buyer are told beside the figures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import pairwise

from quoting.core.estimate.ball_walk import ColourWalk
from quoting.core.estimate.chores import Part
from quoting.core.estimate.ends_within import ends_to_weave
from quoting.core.estimate.estimate import Estimate
from quoting.core.estimate.strands import Point, Why, most_waiting
from quoting.core.ground.cautions import Caution, for_buyer, for_maker
from quoting.core.ground.codes import CautionCode
from quoting.core.order.design import EndsBecome
from quoting.core.order.order import Order
from quoting.core.plan.gauge import BY_SWATCH, Gauge, Made, Sureness
from quoting.core.plan.passes import Plan
from quoting.core.price.price import Price
from quoting.core.quote.hours_advice import hours_cautions
from quoting.core.quote.infants import advised_in, may_be_an_infants
from quoting.core.workshop.euro_rates import is_old
from quoting.core.workshop.selling import Target
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop

MANY_ENDS = 20
WEAVING_SHARE = 0.10
FEWEST_CUTS = 3
MANY_WAITING = 3
LAST_PASSES = 5


def advise(
    order: Order,
    workshop: Workshop,
    plan: Plan,
    estimate: Estimate,
    price: Price,
    *,
    today: date,
    ready: date,
) -> Iterator[Caution]:
    """Yield every caution of a quote, the most pressing first."""
    yield from _price_cautions(order, workshop, price)
    if order.wanted_by is not None and ready > order.wanted_by:
        yield for_maker(CautionCode.LATE, ready_by=ready, wanted_by=order.wanted_by)
    rate = price.exchange
    if rate is not None and is_old(rate.day, today):
        yield for_maker(CautionCode.OLD_RATE, currency=rate.currency, day=rate.day)
    if rate is not None and rate.day > today:
        yield for_maker(CautionCode.RATE_TO_COME, currency=rate.currency, day=rate.day)
    yield from plan.cautions
    yield from _label_cautions(workshop, estimate)
    yield from _sureness_cautions(plan, workshop, estimate)
    yield from _category_cautions(plan, workshop, estimate)
    yield from hours_cautions(estimate.hours, workshop)
    yield from _strand_cautions(order.design.ends, plan, estimate)
    yield from _ball_cautions(plan, estimate)
    yield from _within_cautions(order.design.ends, plan, estimate)
    read_in = order.language or workshop.locale
    if may_be_an_infants(order, plan, workshop.locale, read_in):
        if order.design.ends is EndsBecome.FRINGE:
            yield for_maker(CautionCode.FRINGE_FOR_A_BABY)
        yield for_buyer(CautionCode.BABY_LOOSE_BEDDING, advised_in=advised_in(order, read_in))
        yield for_maker(CautionCode.BABY_SMALL_PARTS)
        yield for_maker(CautionCode.BABY_ENDS)
    yield for_maker(CautionCode.SELLING_RULES)
    yield for_maker(CautionCode.HANDS)


def _price_cautions(order: Order, workshop: Workshop, price: Price) -> Iterator[Caution]:
    if not price.pays_the_hour:
        yield for_maker(
            CautionCode.PAYS_UNDER_WAGE,
            earned=price.earned_per_hour,
            pay=price.pay_per_hour,
            short=-price.profit,
        )
    least = workshop.pricing.minimum
    if least is not None and price.each < least:
        yield for_maker(CautionCode.UNDER_MINIMUM, price=price.each, minimum=least)
    if not price.delivery_band_found:
        carried = any(band.goes_to(order.deliver_to) for band in workshop.delivery.bands)
        if carried:
            yield for_maker(CautionCode.TOO_HEAVY_FOR_BANDS, country=order.deliver_to)
        else:
            yield for_maker(CautionCode.NO_DELIVERY_BAND, country=order.deliver_to)
    if price.target == Target(margin=0.0):
        yield for_maker(CautionCode.NO_PROFIT)


def _label_cautions(workshop: Workshop, estimate: Estimate) -> Iterator[Caution]:
    """Yield a caution for each yarn of the work whose balls cannot all be labelled right."""
    for name in dict.fromkeys(colour.source.yarn for colour in estimate.colours):
        if not workshop.yarn(name).labels_agree:
            yield for_maker(CautionCode.LABELS_APART, yarn=name)


def _sureness_cautions(plan: Plan, workshop: Workshop, estimate: Estimate) -> Iterator[Caution]:
    made = [
        stitch.made(colour.source.yarn)
        for colour in estimate.colours
        for stitch in colour.yarn.counts
        if stitch.stitch != Stitch.CH
    ]
    scaled = {each: each.fabric.motif for each in made if _is_scaled(each, plan)}
    yield from _yarn_cautions([plan.gauges[each] for each in made if each not in scaled])
    for name in dict.fromkeys(scaled.values()):
        if workshop.motif(name, "motif").weighed is None:
            yield for_maker(CautionCode.ESTIMATED_YARN, unravelled=name)
        else:
            yield for_maker(CautionCode.ESTIMATED_YARN, motif=name)


def _is_scaled(made: Made, plan: Plan) -> bool:
    """Return whether yarn goes by a motif of its own yarn that was measured with other rounds."""
    gauge = plan.gauges[made]
    measured = gauge.sureness is Sureness.MEASURED or gauge.borrowed_limits
    return made.fabric != BY_SWATCH and not measured


def _yarn_cautions(used: Sequence[Gauge]) -> Iterator[Caution]:
    """Yield a caution for each way in which gauges are not measured, with its stitches."""
    for code, sureness, swatched in (
        (CautionCode.ROUGH_YARN, Sureness.ROUGH, False),
        (CautionCode.ROUGH_PATTERN, Sureness.ROUGH, True),
        (CautionCode.ESTIMATED_YARN, Sureness.ESTIMATED, True),
    ):
        found = (g.stitch for g in used if (g.sureness, g.swatched) == (sureness, swatched))
        if stitches := tuple(dict.fromkeys(found)):
            yield for_maker(code, stitches=stitches)


def _category_cautions(plan: Plan, workshop: Workshop, estimate: Estimate) -> Iterator[Caution]:
    """Yield a caution for each yarn that is reckoned by a category it was not given."""
    rough = dict.fromkeys(
        colour.source.yarn
        for colour in estimate.colours
        for stitch in colour.yarn.counts
        if not plan.gauges[stitch.made(colour.source.yarn)].swatched
    )
    for yarn in rough:
        if workshop.yarn(yarn).category is None:
            yield for_maker(CautionCode.NO_CATEGORY, yarn=yarn)


def _within_cautions(become: EndsBecome, plan: Plan, estimate: Estimate) -> Iterator[Caution]:
    """Yield that ends lie where no edge is: of rounds, or of balls joined within rows."""
    within = ends_to_weave(become, estimate.strands, plan)
    if within and any(worked.grows for worked in plan.passes):
        yield for_maker(CautionCode.ENDS_LIE_WITHIN)
    elif within:
        yield for_maker(CautionCode.ENDS_LIE_WITHIN, ends=within)


def _strand_cautions(become: EndsBecome, plan: Plan, estimate: Estimate) -> Iterator[Caution]:
    hours, in_rows = estimate.hours, plan.in_rows
    weaving = hours.of(Part.WEAVING_IN)
    if estimate.ends >= MANY_ENDS and weaving >= WEAVING_SHARE * float(hours.total):
        cut = estimate.ended(Why.CUT)
        uncut = estimate.ends - 2 * cut if cut and in_rows else None
        woven = 2 * ends_to_weave(become, estimate.strands, plan) > estimate.ends
        done = None if woven or become is EndsBecome.WOVEN_IN else become.value
        yield for_maker(
            CautionCode.MANY_ENDS, ends=estimate.ends, hours=weaving, uncut=uncut, become=done
        )
    stranded = tuple(colour.colour for colour in estimate.colours if _never_waits(colour.walk))
    if stranded and in_rows:
        yield for_maker(CautionCode.WRONG_EDGE, colours=stranded)
    waiting = most_waiting(estimate.strands)
    if waiting >= MANY_WAITING:
        yield for_maker(CautionCode.YARNS_TANGLE, yarns=waiting)
    if any(colour.walk.long_pass for colour in estimate.colours):
        yield for_maker(CautionCode.LONG_PASS)


def _never_waits(walk: ColourWalk) -> bool:
    """Return whether a colour is cut again and again for lying at the wrong edge."""
    neighbours = pairwise(walk.strands)
    pairs = [
        (one, next_) for one, next_ in neighbours if one.starts.blanket == next_.starts.blanket
    ]
    return len(pairs) >= FEWEST_CUTS and all(
        before.why is Why.CUT and before.ends.edge is not after.starts.edge
        for before, after in pairs
    )


def _ball_cautions(plan: Plan, estimate: Estimate) -> Iterator[Caution]:
    """Yield a caution for each colour whose ball runs out when the blanket is all but done."""
    for colour in estimate.colours:
        joins = (strand.ends for strand in colour.walk.strands if strand.why is Why.RAN_OUT)
        if any(_still_to_work(plan, join) < LAST_PASSES for join in joins):
            if plan.in_rows:
                yield for_maker(
                    CautionCode.RUNS_OUT_LATE, colour=colour.colour, last_passes=LAST_PASSES
                )
            else:
                yield for_maker(
                    CautionCode.RUNS_OUT_LATE, colour=colour.colour, last_rounds=LAST_PASSES
                )


def _still_to_work(plan: Plan, where: Point) -> int:
    """Return the passes of a blanket that come after one, each as often as it is worked."""
    in_part = sum(worked.part == where.part for worked in plan.passes)
    copies = plan.parts[where.part].count - where.copy - 1
    later = plan.passes[where.pass_index + 1 :]
    once = sum(1 if worked.part == where.part else plan.times(worked) for worked in later)
    return once + copies * in_part
