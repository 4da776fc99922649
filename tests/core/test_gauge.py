"""What a swatch says of a stitch: size, yarn, and how sure these are."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from uncertainties import ufloat  # type: ignore[import-untyped]

from quoting.core.estimate.yarn_needed import LABEL_ERROR, relative_error
from quoting.core.ground.errors import Refused
from quoting.core.order.design import ColourSource
from quoting.core.plan.design_gauges import design_gauges
from quoting.core.plan.gauge import Gauge, Made, Sureness, gauge_of
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Piece, Reading, Run, Swatch
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.examples import WOOL, band, sample_design, sample_swatch, sample_workshop, sample_yarn


def gauge(stitch: str, *swatches: Swatch, **changes: Any) -> Gauge:
    return gauge_of(sample_workshop(swatches=swatches, **changes), WOOL, stitch)


def weighed(grams: float, stitches: int = 24, rows: int = 20, **changes: Any) -> Swatch:
    return sample_swatch(piece=Piece(stitches=stitches, rows=rows, weight_g=grams), **changes)


def unravelled(length_cm: float, stitches: int = 20) -> Swatch:
    return sample_swatch(piece=None, run=Run(stitches=stitches, length_cm=length_cm))


def test_chains_in_a_weighed_piece_take_their_share() -> None:
    """By hand: 50 m over 480 hdc and 26 + 2 x 19 chains, each a third of an hdc."""
    assert gauge("hdc", weighed(25)).yarn_m == pytest.approx(50 / (480 + 64 / 3))


def test_a_turning_chain_that_counts_is_weighed_as_a_stitch() -> None:
    """By hand: 24 + 3 - 1 chains to begin with, three of them row 1's first stitch; q = 1/4."""
    counted = gauge("dc", weighed(25, stitch="dc"))
    assert counted.yarn_m == pytest.approx(50 / (480 + 23 / 4))
    habits = Habits(counts_turning_chain={Stitch.DC: False})
    uncounted = gauge("dc", weighed(25, stitch="dc"), habits=habits)
    assert uncounted.yarn_m == pytest.approx(50 / (480 + (27 + 3 * 19) / 4))


def test_a_counted_run_gives_the_yarn_of_a_stitch_itself() -> None:
    assert gauge("hdc", unravelled(176)).yarn_m == pytest.approx(0.088)


def test_a_swatch_has_a_piece_or_a_run_and_not_both() -> None:
    with pytest.raises(Refused, match="piece-or-run"):
        sample_swatch(piece=None)
    with pytest.raises(Refused, match="piece-or-run"):
        sample_swatch(run=Run(stitches=20, length_cm=176))


def test_the_scale_step_makes_the_error_of_one_swatch() -> None:
    weight = ufloat(25, 1 / math.sqrt(12))
    yarn_m = weight * 2 / (480 + 64 / 3)
    assert gauge("hdc", weighed(25)).basis_error == pytest.approx(yarn_m.s / yarn_m.n)


def test_the_ruler_step_makes_the_error_of_one_run() -> None:
    length = ufloat(176, 0.5 / math.sqrt(12))
    each = length / 20
    assert gauge("hdc", unravelled(176)).basis_error == pytest.approx(each.s / each.n)


def test_swatches_that_disagree_are_less_sure_than_the_scale() -> None:
    """By hand: 24 and 26 g; mean 25, s = 1.4142, so s x root(1 + 1/2) / 25 = 6.93 %."""
    pair = gauge("hdc", weighed(24), weighed(26))
    assert pair.yarn_m == pytest.approx(50 / (480 + 64 / 3))
    assert pair.basis_error == pytest.approx(math.sqrt(2) * math.sqrt(1.5) / 25)


def test_swatches_that_agree_leave_the_scale_error() -> None:
    assert gauge("hdc", weighed(25), weighed(25)).basis_error == pytest.approx(
        1 / math.sqrt(12) / 25
    )


def test_several_swatches_give_the_mean_size() -> None:
    other = Reading(stitches=10, width_cm=10, rows=10, height_cm=10)
    both = gauge("hdc", sample_swatch(), sample_swatch(gauge=other))
    assert (both.width_cm, both.height_cm) == pytest.approx((0.9, 0.975))


@pytest.mark.parametrize(("kind", "ratio"), [("sc", 1 / 1.5), ("dc", 2 / 1.5), ("tr", 2.0)])
def test_a_kind_without_a_swatch_is_estimated_from_one_that_has(kind: str, ratio: float) -> None:
    base, guessed = gauge("hdc", sample_swatch()), gauge(kind, sample_swatch())
    assert guessed.yarn_m == pytest.approx(base.yarn_m * ratio)
    assert guessed.height_cm == pytest.approx(base.height_cm * ratio)
    assert guessed.width_cm == pytest.approx(base.width_cm)
    assert (guessed.sureness, guessed.guess_limits) == (Sureness.ESTIMATED, 0.15)
    assert (base.sureness, base.guess_limits) == (Sureness.MEASURED, 0.0)


def test_the_swatch_nearest_in_height_is_taken() -> None:
    low = Reading(stitches=10, width_cm=7, rows=10, height_cm=7)
    swatches = (sample_swatch(), sample_swatch(stitch="sc", gauge=low))
    assert gauge("tr", *swatches).width_cm == pytest.approx(0.8)
    assert gauge("sc", *swatches).width_cm == pytest.approx(0.7)


def test_a_chain_takes_half_the_yarn_of_a_single_crochet() -> None:
    chain = gauge("ch", sample_swatch())
    assert chain.yarn_m == pytest.approx(gauge("sc", sample_swatch()).yarn_m / 2)
    assert chain.height_cm == 0


def test_a_slip_stitch_is_a_third_of_a_single_crochet_and_a_guess() -> None:
    """All the yarn of a seam may be off; chains are within what was measured."""
    single = sample_swatch(stitch="sc")
    for swatch in (single, sample_swatch()):
        sc, slip, chain = (gauge(stitch, swatch) for stitch in ("sc", "sl st", "ch"))
        assert slip.yarn_m == pytest.approx(sc.yarn_m / 3)
        assert (slip.guess_limits, chain.guess_limits) == (0.15, 0.0)
    assert gauge("sl st").guess_limits == gauge("sc").guess_limits == 0.0


def test_no_swatch_at_all_is_rough() -> None:
    """By hand: category 4 has 11 to 14 single crochet in 4 in, so 10.16 / 12.5 cm each."""
    rough = gauge("sc")
    width = 10.16 / 12.5
    assert rough.sureness is Sureness.ROUGH
    assert rough.width_cm == pytest.approx(width)
    assert rough.yarn_m == pytest.approx(10 / width * width * width / 100)
    assert rough.basis_error == pytest.approx(0.25 / 1.96)
    assert gauge("dc").yarn_m == pytest.approx(2 * rough.yarn_m)


def test_a_pattern_has_the_gauge_of_its_own_swatch() -> None:
    moss = Pattern(name="moss", like=Stitch.SC)
    measured = gauge("moss", weighed(25, stitch="moss"), patterns=(moss,))
    assert measured.sureness is Sureness.MEASURED
    assert measured.yarn_m == pytest.approx(50 / (480 + (25 + 19) / 2))


def test_a_pattern_without_a_swatch_is_taken_as_the_stitch_it_is_like() -> None:
    moss = Pattern(name="moss", like=Stitch.HDC)
    guessed = gauge("moss", sample_swatch(), patterns=(moss,))
    assert guessed.yarn_m == pytest.approx(gauge("hdc", sample_swatch()).yarn_m)
    assert (guessed.sureness, guessed.guess_limits) == (Sureness.ROUGH, 0.35)


def test_a_pattern_in_a_yarn_of_no_swatch_is_rougher_than_a_basic_stitch() -> None:
    moss = Pattern(name="moss", like=Stitch.HDC)
    guessed = gauge("moss", patterns=(moss,))
    assert guessed.sureness is Sureness.ROUGH
    assert math.hypot(guessed.basis_error, guessed.guess_limits / 1.96) == pytest.approx(
        0.35 / 1.96
    )


def test_a_pattern_in_a_borrowed_gauge_stays_rough() -> None:
    moss = Pattern(name="moss", like=Stitch.HDC)
    design = sample_design(
        stitch="moss", colours={"rust": ColourSource(yarn="fell dk", colour="rust")}
    )
    gauges = design_gauges(design, replace(with_second_yarn(), patterns=(moss,)))
    assert gauges[Made("fell dk", "moss")].sureness is Sureness.ROUGH
    assert gauges[Made("fell dk", "sc")].sureness is Sureness.ESTIMATED


def test_a_yarn_that_was_given_no_category_is_reckoned_as_a_medium_one() -> None:
    """Craft Yarn Council, category 4: 11 to 14 single crochet in 4 in."""
    nameless = replace(sample_yarn(), category=None)
    assert nameless.category is None
    assert gauge("sc", yarns=(nameless,)).width_cm == pytest.approx(10.16 / 12.5)


def with_second_yarn() -> Workshop:
    other = replace(sample_yarn(), name="fell dk", stock=())
    return sample_workshop(yarns=(sample_yarn(), other))


def test_a_second_yarn_without_a_swatch_is_taken_to_work_up_as_the_first() -> None:
    design = sample_design(colours={"rust": ColourSource(yarn="fell dk", colour="rust")})
    gauges = design_gauges(design, with_second_yarn())
    assert gauges[Made("fell dk", "hdc")].yarn_m == gauges[Made(WOOL, "hdc")].yarn_m
    assert gauges[Made("fell dk", "hdc")].sureness is Sureness.ESTIMATED
    assert gauges[Made(WOOL, "hdc")].sureness is Sureness.MEASURED


def test_all_stitches_of_a_yarn_without_a_swatch_are_off_together() -> None:
    """Reference: the uncertainties package, one guess for the yarn, and one for dc's ratio."""
    design = sample_design(colours={"rust": ColourSource(yarn="fell dk", colour="rust")})
    gauges = design_gauges(replace(design, border=(band("dc"),)), with_second_yarn())
    own = gauges[Made(WOOL, "hdc")].basis_error
    yarn = ufloat(1, own) * ufloat(1, 0.15 / 1.96) * ufloat(1, LABEL_ERROR)
    total = 30 * yarn + 10 * yarn * ufloat(1, 0.15 / 1.96)
    second = {stitch: gauges[Made("fell dk", stitch)] for stitch in ("hdc", "dc")}
    error = relative_error({"hdc": 30, "dc": 10}, second, 0.0)
    assert error == pytest.approx(total.s / total.n)
