"""A construction that is not said, keys of another one, layouts and pools that do not fit."""

from __future__ import annotations

import pytest

from tests.files.test_bad_constructions import SQUARES, mistakes_of
from tests.motif_examples import FIVE


def test_every_layout_of_other_rounds_is_told() -> None:
    spoilt_twice = SQUARES.replace('"plum",', "")
    assert mistakes_of(spoilt_twice) == {
        "blanket.squares.layouts.1.colours": "colours-not-rounds",
        "blanket.squares.layouts.2.colours": "colours-not-rounds",
    }


def test_a_pool_of_which_no_round_is_left_to_mix_is_told() -> None:
    head, tail = SQUARES.split("[[blanket.squares.layouts]]", 1)
    pool = f'[blanket.squares.pool]\ncolours = ["teal"]\nouter = {list(FIVE)}\n\n'
    mixed = head + pool + "[blanket.squares.join]" + tail.split("[blanket.squares.join]")[1]
    assert mistakes_of(mixed) == {"blanket.squares.pool.outer": "no-round-to-mix"}


@pytest.mark.parametrize(
    ("new", "mistakes"),
    [
        ("", {"blanket.construction": "choice-not-said"}),
        ('construction = "granny"', {"blanket.construction": "not-one-of"}),
        ('construction = "squares"\nstop_at = "row"', {"blanket.stop_at": "key-not-chosen"}),
        ('construction = "squares"\ncentre = {}', {"blanket.centre": "key-not-chosen"}),
    ],
)
def test_the_table_that_is_there_tells_what_is_meant(new: str, mistakes: dict[str, str]) -> None:
    """So that what only follows from a word that is wrong or missing is not told."""
    assert mistakes_of(SQUARES, ('construction = "squares"', new)) == mistakes
