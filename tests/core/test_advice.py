"""Every caution is given where it holds, and nowhere else."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.estimate.strands import Why
from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.codes import CautionCode
from quoting.core.order.design import ColourSource
from quoting.core.workshop.selling import Delivery, Pay
from tests.core.caution_cases import (
    ALWAYS,
    BABY,
    CASES,
    FINISHER,
    GROWN_UP,
    MAKER,
    SINGLE_ROWS,
    Case,
    case,
    given,
    sold_in,
    striped,
    timed,
)
from tests.examples import (
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_yarn,
    section,
)


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
