"""How errors combine: the guides' own worked examples."""

from __future__ import annotations

import pytest

from quoting.core import yarn
from quoting.core.gauge import Sureness
from quoting.core.hours import Hours, Part, Task
from quoting.core.stitches import Stitch
from quoting.core.swatch import Piece, Run
from quoting.core.yarn import relative_error
from tests.examples import plain_gauge, sample_swatch


def test_a_scale_that_reads_in_grams() -> None:
    """JCGM 100, 4.3.7 (clause from memory): a display step d leaves d/root 12, of 1 g 0.2887 g."""
    one_gram = sample_swatch(piece=Piece(stitches=10, rows=10, weight_g=1, scale_step_g=1))
    assert one_gram.reading_error == pytest.approx(0.2887, abs=5e-5)
    ruler = sample_swatch(piece=None, run=Run(stitches=10, length_cm=100, ruler_step_cm=1))
    assert ruler.reading_error * 100 == pytest.approx(0.2887, abs=5e-5)


def test_a_product_and_quotient(monkeypatch: pytest.MonkeyPatch) -> None:
    """EURACHEM/CITAC QUAM, example A1.

    1000 x 100.28 (0.05) x 0.9999 (0.000058) / 100.0 (0.07) = 1002.7 with 0.9: its three relative
    errors are put where the swatch's, the tension's and the label's go.
    """
    monkeypatch.setattr(yarn, "LABEL_ERROR", 0.07 / 100.0)
    gauge = plain_gauge(Stitch.HDC, 0.8, 0.95, basis_error=0.05 / 100.28)
    concentration = 1000 * 100.28 * 0.9999 / 100.0
    error = relative_error({"hdc": concentration}, {"hdc": gauge}, 0.000058 / 0.9999)
    assert round(concentration, 1) == 1002.7
    assert round(error * concentration, 1) == 0.9


def test_a_root_sum_of_squares() -> None:
    """NIST TN 1297, D.2: nine components of a calibration combine to 34."""
    components = (25, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6)
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
    assert round(Hours(tasks=tasks).span.half_width) == 34
