"""Stitches: names, turning chains, foundation chains."""

from __future__ import annotations

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.stitches import (
    TURNING_CHAINS,
    Stitch,
    TurningChain,
    Vocabulary,
    read_stitch,
    stitch_name,
)
from tests.examples import sample_workshop


@pytest.mark.parametrize(("stitch", "chains"), [("sc", 1), ("hdc", 2), ("dc", 3), ("tr", 4)])
def test_a_row_is_turned_with_the_published_chains(stitch: str, chains: int) -> None:
    """Crochet Guild of America lessons (1997); For Dummies reference (Wiley), turning chain."""
    assert TURNING_CHAINS[Stitch(stitch)] == chains
    assert sample_workshop().turning_chain(stitch).chains == chains


@pytest.mark.parametrize(
    ("stitch", "count", "counts", "chain"),
    [("sc", 25, False, 26), ("dc", 10, True, 12), ("hdc", 11, True, 12), ("hdc", 11, False, 13)],
)
def test_the_foundation_chain_is_that_of_published_patterns(
    stitch: str,
    count: int,
    counts: bool,  # noqa: FBT001 - a parameter
    chain: int,
) -> None:
    """Common practice, published patterns."""
    turning = TurningChain(TURNING_CHAINS[Stitch(stitch)], counts)
    assert turning.foundation(count) == chain


@pytest.mark.parametrize(("stitch", "count", "chain"), [("sc", 25, 26), ("dc", 10, 12)])
def test_single_crochet_does_not_count_its_turning_chain_and_double_does(
    stitch: str, count: int, chain: int
) -> None:
    """Common practice, no source."""
    assert sample_workshop().turning_chain(stitch).foundation(count) == chain


def test_a_workshop_may_count_the_turning_chain_of_half_double_crochet() -> None:
    """Common practice, no source: patterns differ here."""
    counted = sample_workshop(habits=Habits(counts_turning_chain={Stitch.HDC: True}))
    assert counted.turning_chain("hdc").foundation(11) == 12
    assert sample_workshop().turning_chain("hdc").foundation(11) == 13


@pytest.mark.parametrize(
    ("us", "uk"), [("sc", "dc"), ("hdc", "htr"), ("dc", "tr"), ("tr", "dtr"), ("ch", "ch")]
)
def test_british_names_are_one_step_off(us: str, uk: str) -> None:
    """Common practice, no source."""
    assert stitch_name(Stitch(us), Vocabulary.UK) == uk
    assert stitch_name(Stitch(us), Vocabulary.US) == us
    if us != "ch":
        assert read_stitch(uk, Vocabulary.UK) is Stitch(us)


def test_a_name_of_the_other_vocabulary_alone_is_refused() -> None:
    """Common practice, no source: htr and dtr are British only, sc and hdc American only."""
    for name, terms in (("htr", Vocabulary.US), ("sc", Vocabulary.UK), ("hdc", Vocabulary.UK)):
        with pytest.raises(Refused, match="other-vocabulary"):
            read_stitch(name, terms)
    assert read_stitch("moss", Vocabulary.US) is None
