"""What a body is made of, as stripings and layouts are told beside one another."""

from __future__ import annotations

from quoting.core.order.from_centre import RoundStripe
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import Layout, Pool
from quoting.wording import body_words
from tests.constructed import from_centre, squares
from tests.examples import section

FIT = ", each once, fit to the size"


def test_stripes_that_are_worked_once_say_that_their_numbers_are_but_shares() -> None:
    two = (RoundStripe(colour="teal", rounds=2), RoundStripe(colour="oat"))
    assert body_words(from_centre(stripes=two)) == ("2 teal, 1 oat",)
    assert body_words(from_centre(stripes=two, fitted=True)) == (f"2 teal, 1 oat{FIT}",)
    sections = section("teal", "oat"), section("rust", fitted=True)
    assert body_words(InRows(sections=sections)) == ("1 teal, 1 oat", f"1 rust{FIT}")


def test_rounds_of_one_colour_in_a_layout_are_told_together() -> None:
    layouts = (Layout(colours=("teal", "teal", "teal", "teal", "oat")),)
    assert body_words(squares(layouts=layouts)) == ("4 teal, 1 oat",)


def test_a_pool_is_told_as_mixed_and_what_all_motifs_end_in_apart() -> None:
    pool = Pool(colours=("teal", "rust"), outer=("oat",))
    assert body_words(squares(layouts=(), pool=pool)) == ("teal, rust mixed; then oat",)
    assert body_words(squares(layouts=(), pool=Pool(colours=("teal", "rust")))) == (
        "teal, rust mixed",
    )
