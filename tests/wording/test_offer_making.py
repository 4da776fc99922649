"""How a blanket is made, and how large it is, as its buyer is told by its shape."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.ground.measures import Units
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.quote.offer import OfferedBorder, offer_of
from quoting.core.quote.offered_motifs import OfferedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.wording import say_offer
from tests.examples import sample_quote

OFFER = replace(offer_of(sample_quote()), width_cm=100.6, height_cm=100.6)
MOTIFS = OfferedMotifs(
    columns=8, rows=11, side_cm=15, layouts=4, join=JoinMethod.SINGLE_CROCHET, join_colour="oat"
)


def said(**changes: object) -> dict[str, str]:
    """Return every fact of what is made, by its name."""
    facts = say_offer(replace(OFFER, **changes)).facts  # type: ignore[arg-type]
    return {fact.name: fact.text.replace("\u00a0", " ") for fact in facts}


def made(**changes: object) -> str | None:
    return said(**changes).get("How it is made")


def test_of_a_blanket_in_rows_the_stitch_alone_is_told() -> None:
    assert made() is None


def test_motifs_are_told_with_their_layouts_and_their_join() -> None:
    assert made(motifs=MOTIFS) == (
        "88 motifs of 15 cm, 8 across and 11 down, in 4 layouts of colours, "
        "joined with single crochet in oat"
    )


def test_a_crocheted_join_is_called_as_the_buyer_calls_the_stitch() -> None:
    assert "joined with double crochet in oat" in str(made(motifs=MOTIFS, speaks=Vocabulary.UK))
    slip = replace(MOTIFS, join=JoinMethod.SLIP_STITCH)
    assert "joined with slip stitch in oat" in str(made(motifs=slip))


@pytest.mark.parametrize("method", JoinMethod)
def test_every_join_is_told_and_no_colour_that_it_does_not_have(method: JoinMethod) -> None:
    colour = None if method is JoinMethod.AS_YOU_GO else "oat"
    words = str(made(motifs=replace(MOTIFS, join=method, join_colour=colour)))
    assert words.startswith("88 motifs of 15 cm, 8 across and 11 down, in 4 layouts of colours, ")
    assert words.endswith("in oat") is (colour is not None)
    assert "None" not in words


def test_motifs_of_a_pool_are_told_as_mixed_and_not_by_what_came_of_it() -> None:
    words = str(made(motifs=replace(MOTIFS, mixed=True)))
    assert ", 8 across and 11 down, their colours mixed, joined with " in words


def test_motifs_in_one_layout_are_all_alike_and_one_alone_is_joined_to_none() -> None:
    assert ", all in the same colours, " in str(made(motifs=replace(MOTIFS, layouts=1)))
    assert made(motifs=replace(MOTIFS, columns=1, rows=1, layouts=1)) == "1 motif of 15 cm"


@pytest.mark.parametrize(
    ("centre", "words"),
    [
        (Counting.CLUSTERS, "in one piece, in rounds from the centre"),
        (Counting.SOLID, "in one piece, in rounds from the centre"),
        (Counting.CIRCLE, "a circle in one piece, in rounds from the centre"),
        (Counting.HEXAGON, "a hexagon in one piece, in rounds from the centre"),
    ],
)
def test_one_piece_is_told_by_its_shape(centre: Counting, words: str) -> None:
    """An offer that was kept before squares were told as open or solid says what it did."""
    assert made(centre=centre) == words


@pytest.mark.parametrize(
    ("spaces", "words"),
    [
        (True, ", worked in clusters of stitches with spaces between them"),
        (False, ", worked solid"),
    ],
)
def test_squares_are_told_as_open_or_solid(
    spaces: bool,  # noqa: FBT001 - a parameter
    words: str,
) -> None:
    square = made(centre=Counting.SOLID, spaces=spaces)
    assert square == f"in one piece, in rounds from the centre{words}"
    assert f", 8 across and 11 down{words}, in 4 layouts" in str(made(motifs=MOTIFS, spaces=spaces))
    alone = replace(MOTIFS, columns=1, rows=1, layouts=1)
    assert made(motifs=alone, spaces=spaces) == f"1 motif of 15 cm{words}"


@pytest.mark.parametrize(
    ("border", "within", "words"),
    [
        ((), None, "about 101 cm across"),
        ((), 2.0, "about 101 cm across; to within 2 cm"),
        (None, None, "about 101 cm across, border included"),
        (None, 2.0, "about 101 cm across, border included; to within 2 cm"),
    ],
)
def test_a_circle_is_as_large_as_it_is_across(
    border: tuple[OfferedBorder, ...] | None, within: float | None, words: str
) -> None:
    assert said(centre=Counting.CIRCLE, border=border, size_within_cm=within)["Size"] == words


def test_a_hexagon_is_told_across_its_sides_and_across_its_corners() -> None:
    """100.6 cm across its sides are 100.6 × 2/√3 = 116.2 cm across its corners."""
    told = said(centre=Counting.HEXAGON, height_cm=100.6 * 2 / 3**0.5, border=(), size_within_cm=2)
    assert told["Size"] == (
        "about 101 cm from side to side and 116 cm from corner to corner; to within 2 cm"
    )


def test_a_circle_is_told_in_the_buyers_unit_to_the_half_inch() -> None:
    """100.6 cm are 39.6 in, at 2.54 cm to the inch (exact, by law)."""
    told = said(centre=Counting.CIRCLE, units=Units.INCHES, border=())
    assert told["Size"] == "about 39.5 in across"


def test_of_motifs_the_layouts_if_any_may_be_changed_and_of_other_blankets_the_stripes() -> None:
    for motifs, words in (
        (MOTIFS, "colours, layouts, size"),
        (replace(MOTIFS, mixed=True), "colours, size"),
        (None, "colours, stripes, size"),
    ):
        changes = say_offer(replace(OFFER, motifs=motifs, change_days=7)).changes
        assert changes[0].text.startswith(words)


@pytest.mark.parametrize("locale", ["de_DE", "es_ES", "fr_FR", "nl_NL"])
def test_other_languages_say_all_of_it(locale: str) -> None:
    english = set(said(motifs=MOTIFS).values()) | set(said(centre=Counting.CIRCLE).values())
    told = {*said(motifs=MOTIFS, locale=locale).values()}
    told |= {*said(centre=Counting.CIRCLE, locale=locale).values()}
    shared = {said()[name] for name in ("Yarn", "Colours", "With it")}
    assert told & english <= shared
