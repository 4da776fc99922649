"""What a task is called: what its minutes are of stands in it, in both units where it must."""

from __future__ import annotations

import pytest

from quoting.wording import Speech, task_words
from tests.wording.speeches import GB, UK_NAMES, US


@pytest.mark.parametrize(
    ("what", "speech", "words"),
    [
        ("join_as_you_go", GB, "joining an edge of 15 cm as you go"),
        ("join_continuous", US, "joining an edge of 5.9 in with one last round"),
        ("sew_whipstitch", GB, "sewing a centimetre in whipstitch"),
        ("sew_mattress", US, "sewing a centimeter (0.39 in) in mattress stitch"),
        ("join_braid", US, "joining the loops of an edge"),
        ("sc", UK_NAMES, "dc"),
    ],
)
def test_a_task_says_what_its_minutes_are_of(what: str, speech: Speech, words: str) -> None:
    assert task_words(what, speech) == words
