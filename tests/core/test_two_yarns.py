"""Swatches of two yarns: neither says anything of the other, where it has its own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.gauge import Sureness, gauge_of, has_swatch
from quoting.core.stitches import Stitch
from quoting.core.swatch import Reading
from quoting.core.workshop import Pattern, Workshop
from tests.examples import WOOL, sample_swatch, sample_workshop, sample_yarn

FINE = "fell dk"
NARROW = Reading(stitches=20, width_cm=12, rows=20, height_cm=14)


def workshop(**changes: object) -> Workshop:
    """Return a workshop of a thick and a fine yarn, the thick one swatched first."""
    fine = replace(sample_yarn(), name=FINE, stock=())
    return sample_workshop(yarns=(sample_yarn(), fine), **changes)


def test_each_yarn_has_the_gauge_of_its_own_swatch() -> None:
    both = workshop(swatches=(sample_swatch(), sample_swatch(yarn=FINE, gauge=NARROW)))
    thick, fine = (gauge_of(both, yarn, "hdc") for yarn in (WOOL, FINE))
    assert (thick.width_cm, thick.height_cm) == pytest.approx((0.8, 0.95))
    assert (fine.width_cm, fine.height_cm) == pytest.approx((0.6, 0.7))
    assert (thick.basis, fine.basis) == (f"{WOOL}/hdc", f"{FINE}/hdc")


def test_a_yarn_is_not_measured_by_the_swatch_of_another() -> None:
    gauge = gauge_of(workshop(), FINE, "hdc")
    assert gauge.sureness is Sureness.ROUGH
    assert gauge.basis == f"{FINE}/category"


def test_a_yarn_has_a_swatch_where_one_of_all_the_swatches_is_of_it() -> None:
    both = workshop(swatches=(sample_swatch(), sample_swatch(yarn=FINE)))
    assert [has_swatch(both, yarn) for yarn in (WOOL, FINE, "unheard-of")] == [True, True, False]
    assert not has_swatch(workshop(), FINE)


def test_of_two_swatches_as_tall_the_basic_stitchs_is_taken_before_a_patterns() -> None:
    moss, heather = (Pattern(name=name, like=Stitch.HDC) for name in ("moss", "heather"))
    swatches = (sample_swatch(stitch="moss", gauge=NARROW), sample_swatch())
    found = gauge_of(workshop(swatches=swatches, patterns=(moss, heather)), WOOL, "heather")
    assert found.basis == f"{WOOL}/hdc"
