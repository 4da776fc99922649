"""Every caution: a case in which it is given, and one in which it is not."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.codes import CautionCode
from quoting.core.order.design import ColourSource
from quoting.core.order.in_rows import Section
from quoting.core.order.order import Order, Terms
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.selling import Delivery, Pay, Pricing, Target
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
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
    section,
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
    "baby-loose-bedding": (case(BABY), case(GROWN_UP)),
    "baby-small-parts": (case(BABY), case(GROWN_UP)),
    "baby-ends": (case(BABY), case(GROWN_UP)),
}
ALWAYS = {"selling-rules", "hands"}


def told(one: Case) -> tuple[Caution, ...]:
    return sample_quote(*one).cautions


def codes(one: Case) -> set[str]:
    return {caution.code for caution in told(one)}


@pytest.mark.parametrize("code", CASES)
def test_a_caution_is_given_where_it_holds_and_nowhere_else(code: str) -> None:
    holds, does_not = CASES[code]
    assert code in codes(holds)
    assert code not in codes(does_not)


def test_some_things_are_always_said() -> None:
    assert codes(case(GROWN_UP)) >= ALWAYS


def test_a_code_is_said_once_for_one_thing() -> None:
    for one, _ in CASES.values():
        said = [(caution.code, tuple(caution.facts.items())) for caution in told(one)]
        assert len(said) == len(set(said))


def test_only_what_concerns_the_sleeping_place_is_for_the_buyer() -> None:
    readers = {caution.code: caution.reader for caution in told(case(BABY))}
    assert {c for c, r in readers.items() if r is Reader.BUYER} == {"baby-loose-bedding"}


def test_a_blanket_with_many_ends_is_told_how_many_it_would_have_with_no_colour_cut() -> None:
    """Two colours in single rows: after the first of each, every row but the last cuts one."""
    quote = sample_quote(*striped(SINGLE_ROWS))
    said = next(caution for caution in quote.cautions if caution.code == "many-ends")
    cut = quote.estimate.ended(Why.CUT)
    assert cut > 20
    assert said.facts["uncut"] == quote.estimate.ends - 2 * cut


def test_a_blanket_whose_ends_all_come_from_joins_is_told_of_no_fewer() -> None:
    plain = striped(section("oat"))[0]
    quote = sample_quote(plain, sold_in(10))
    said = next(caution for caution in quote.cautions if caution.code == "many-ends")
    assert quote.estimate.ended(Why.CUT) == 0
    assert said.facts["uncut"] is None


def test_slow_and_fast_hands_are_questioned() -> None:
    """Reported contest paces are 31-33 stitches a minute: over 35 is a slip of the pen."""
    slow, fast = timed(101), timed(14)
    assert "odd-pace" in codes(slow)
    assert "odd-pace" in codes(fast)
    assert "odd-pace" not in codes(timed(15))


def test_two_blankets_alike_tangle_no_more_than_one() -> None:
    order = sample_order(quantity=3)
    assert "yarns-tangle" not in codes(case(order))


def test_no_bands_at_all_leave_the_plain_delivery() -> None:
    plain = Delivery(charged=Decimal(5))
    assert "no-delivery-band" not in codes(case(sample_order(deliver_to="NZ"), delivery=plain))
    nowhere = case(replace(sample_order(), deliver_to=None))
    assert "no-delivery-band" not in codes(nowhere)


def test_no_code_of_the_core_goes_without_a_case() -> None:
    assert set(CautionCode) <= CASES.keys() | ALWAYS


def test_colours_cut_at_the_right_edge_for_their_distance_are_not_at_the_wrong_one() -> None:
    far = section("oat", "teal", "rust", "plum", rows=2, repeats=6)
    assert "wrong-edge" not in codes(striped(far))


@pytest.mark.parametrize("quantity", [1, 4, 8])
def test_a_new_blanket_is_no_reason_to_find_a_yarn_at_the_wrong_edge(quantity: int) -> None:
    """Each of 32 rows begins at the far edge and ends at the start edge."""
    bare = {"first_rows": (), "border": (), "width_cm": 30, "height_cm": 30.4}
    plain = sample_design(sections=(section("oat"),), **bare)
    assert "wrong-edge" not in codes((sample_order(design=plain, quantity=quantity), sold_in(9999)))


def test_only_stitches_worked_in_a_yarn_are_said_to_be_estimated_in_it() -> None:
    """The border's yarn has a swatch in the border's stitch, and none in the blanket's."""
    soft = replace(sample_yarn(), name="soft", stock=())
    swatches = (sample_swatch(), sample_swatch(yarn="soft", stitch="sc"))
    edged = sample_design(
        sections=(section("oat"),),
        first_rows=(),
        border=(band(colour="rust"),),
        colours={"rust": ColourSource(yarn="soft", colour="rust")},
    )
    two = case(sample_order(design=edged), yarns=(sample_yarn(), soft), swatches=swatches)
    assert "estimated-yarn" not in codes(two)
    assert "estimated-yarn" in codes((two[0], replace(two[1], swatches=swatches[:1])))


def wage_cautions(price: str, pay: Pay) -> list[Caution]:
    order, workshop = given(price, pay=pay)
    cautions = sample_quote(order, workshop).cautions
    return [caution for caution in cautions if caution.code == "pays-under-wage"]


def test_an_hour_is_judged_by_the_pay_of_every_kind_of_hour() -> None:
    """An hour at 193 earns more than making pays, and at 426 less: the profit is what tells."""
    (short,) = wage_cautions("193", FINISHER)
    quote = sample_quote(*given("193", pay=FINISHER))
    assert quote.price.earned_per_hour > FINISHER.making_per_hour
    assert short.facts["short"] == -quote.price.profit > 0
    assert short.facts["pay"] == round(quote.price.own_pay / quote.price.hours, 2)
    paid = sample_quote(*given("426", pay=MAKER)).price
    assert paid.earned_per_hour < MAKER.making_per_hour
    assert paid.profit > 0
    assert wage_cautions("426", MAKER) == []
