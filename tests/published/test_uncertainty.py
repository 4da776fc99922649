"""How errors combine: the guides' own worked examples."""

from __future__ import annotations

import math
from decimal import Decimal

import pytest

from quoting.core.estimate import yarn_needed as yarn
from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.yarn_needed import relative_error
from quoting.core.plan.gauge import Sureness, gauge_of
from quoting.core.workshop.swatches import Piece, Run
from quoting.core.workshop.yarns import PutUp
from tests.examples import WOOL, sample_swatch, sample_workshop, sample_yarn


def test_a_scale_that_reads_in_grams() -> None:
    """JCGM 100, 4.3.7 (clause from memory): a display step d leaves d/root 12, of 1 g 0.2887 g."""
    one_gram = sample_swatch(piece=Piece(stitches=10, rows=10, weight_g=1, scale_step_g=1))
    assert one_gram.reading_error == pytest.approx(0.2887, abs=5e-5)
    ruler = sample_swatch(piece=None, run=Run(stitches=10, length_cm=100, ruler_step_cm=1))
    assert ruler.reading_error * 100 == pytest.approx(0.2887, abs=5e-5)


def test_a_product_and_quotient(monkeypatch: pytest.MonkeyPatch) -> None:
    """EURACHEM/CITAC QUAM, example A1.

    1000 x 100.28 (0.05) x 0.9999 (0.000058) / 100.0 (0.07) = 1002.7 with 0.9. The mass is what a
    swatch weighs on a scale of so coarse a step; the volume its stitches, 3 by 27 of hdc and 57
    chains at a third of one; the purity the metres of a gram. Three relative errors are put where
    the swatch's, the tension's and the label's go.
    """
    monkeypatch.setattr(yarn, "LABEL_ERROR", 0.07 / 100.0)
    weighed = Piece(stitches=3, rows=27, weight_g=100.28, scale_step_g=0.05 * math.sqrt(12))
    sold = PutUp(weight_g=100, length_m=999.9, price=Decimal(1))
    shop = sample_workshop(
        yarns=(sample_yarn(put_ups=(sold,), stock=()),), swatches=(sample_swatch(piece=weighed),)
    )
    gauge = gauge_of(shop, WOOL, "hdc")
    concentration = 100 * gauge.yarn_m
    error = relative_error({"hdc": concentration}, {"hdc": gauge}, 0.000058 / 0.9999)
    assert round(concentration, 1) == 1002.7
    assert round(error * concentration, 1) == 0.9


def combined(*components: float) -> float:
    """Return the half-width of hours whose tasks are each so far off."""
    tasks = tuple(
        Task(
            part=Part.FINISHING,
            what=str(number),
            count=1,
            minutes_each=1000,
            sureness=Sureness.MEASURED,
            shared_min=component,
        )
        for number, component in enumerate(components)
    )
    return Hours(tasks=tasks).span.half_width


def test_a_root_sum_of_squares() -> None:
    """NIST TN 1297, D.2: nine components of a calibration combine to 34."""
    assert round(combined(25, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6)) == 34


def test_five_relative_components_of_a_titration() -> None:
    """EURACHEM/CITAC QUAM, example A2, table A2.1: 0.00097 of 0.10214 mol/l is 0.00010."""
    relative = combined(0.0005, 0.00033, 0.00029, 0.000019, 0.0007)
    assert relative == pytest.approx(0.00097, abs=5e-6)
    assert round(0.10214 * relative, 5) == 0.00010


def test_a_step_of_a_display_leaves_a_third_of_itself_less_a_little() -> None:
    """JCGM 100, F.2.2.1 (from memory): a resolution dx leaves 0.29 dx."""
    coarse = sample_swatch(piece=Piece(stitches=10, rows=10, weight_g=40, scale_step_g=5))
    assert coarse.reading_error * 40 / 5 == pytest.approx(0.29, abs=0.005)
