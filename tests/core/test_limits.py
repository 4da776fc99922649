"""A slip of the hand in a swatch or a yarn ends in a refusal, not in endless work."""

from dataclasses import replace
from datetime import date

import pytest

from quoting.core.errors import Refused
from quoting.core.quote import quote_order
from tests.examples import sample_order, sample_workshop

TODAY = date(2026, 11, 25)


def refused_code(workshop) -> str:
    with pytest.raises(Refused) as refused:
        quote_order(sample_order(), workshop, today=TODAY)
    (mistake,) = refused.value.mistakes
    return mistake.code


def with_gauge(**sides):
    workshop = sample_workshop()
    swatch = workshop.swatches[0]
    return replace(workshop, swatches=(replace(swatch, gauge=replace(swatch.gauge, **sides)),))


def test_stitches_a_thousandth_of_a_millimetre_wide_are_too_many_for_a_row():
    assert refused_code(with_gauge(width_cm=0.001)) == "too-many-stitches"


def test_rows_a_thousandth_of_a_millimetre_high_are_too_many_for_a_blanket():
    assert refused_code(with_gauge(height_cm=0.001)) == "too-many-rows"


def test_a_ball_that_weighs_next_to_nothing_is_told_and_not_bought_by_the_million():
    workshop = sample_workshop()
    yarn = workshop.yarns[0]
    light = tuple(replace(put_up, weight_g=1e-7) for put_up in yarn.put_ups)
    assert refused_code(replace(workshop, yarns=(replace(yarn, put_ups=light),))) == (
        "too-many-balls"
    )
