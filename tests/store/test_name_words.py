"""A name's words are taken out of a text, however they are written, and no others."""

from __future__ import annotations

import pytest

from quoting.store.name_words import FORGOTTEN, NameWords

HERS = NameWords(frozenset({"Olive Grey", "Olive Gray-Müller"}))


@pytest.mark.parametrize(
    ("text", "without"),
    [
        ("Cot blanket for Olive Grey", f"Cot blanket for {FORGOTTEN}"),
        ("OLIVE'S BLANKET", f"{FORGOTTEN} BLANKET"),
        ("Olive’s and the Greys’ throw", f"{FORGOTTEN} and the {FORGOTTEN} throw"),
        ("grey, olive and mueller", f"{FORGOTTEN} and mueller"),
        ("For Muller", f"For {FORGOTTEN}"),
        ("Olives, greyish, a hedge", f"{FORGOTTEN}, greyish, a hedge"),
        ("Moorland stripes", "Moorland stripes"),
        ("", ""),
    ],
)
def test_every_word_of_it_goes_and_no_other(text: str, without: str) -> None:
    assert HERS.out_of(text) == without


def test_initials_are_left_for_they_are_everywhere() -> None:
    assert NameWords(frozenset({"J. K. Fell"})).out_of("A, J and K of Fell") == (
        f"A, J and K of {FORGOTTEN}"
    )


def test_a_name_goes_where_words_are_not_parted() -> None:
    assert NameWords(frozenset({"山田花子"})).out_of("山田花子様の毛布") == f"{FORGOTTEN}様の毛布"


def test_signs_in_a_name_are_only_signs() -> None:
    assert NameWords(frozenset({"Ada (M.*"})).out_of("For ada (m.* and all") == (
        f"For {FORGOTTEN} and all"
    )


def test_a_title_stays_as_short_as_a_title_may_be() -> None:
    title = "Jo " * 20 + "and a long blanket for a long bench"
    assert len(NameWords(frozenset({"Jo Li"})).out_of(title.replace("Jo ", "Jo x "), 80)) <= 80
    assert NameWords(frozenset({"Jo Li"})).out_of("x" * 90, 80) == "x" * 90
