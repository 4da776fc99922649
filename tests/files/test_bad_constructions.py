"""What cannot be worked from the centre or of squares is told at its place, in a sentence."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quoting.core.ground.errors import Mistake, Refused
from quoting.core.order.joined_squares import JoinMethod, MotifJoin
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.motifs import EarlierSide
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.files.toml_text import load_toml
from quoting.schema import load_order_text, load_workshop_text, order_text, workshop_text
from quoting.schema.documents import any_locale
from quoting.schema.reading import read_order, read_workshop
from quoting.wording import mistake_sentence, speech_of
from tests.examples import TODAY
from tests.files.conftest import edited, found
from tests.files.test_any_file import anything, places_in, spoilt
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_motif,
    sample_squares,
    squares_order,
)

WORKSHOP = motif_workshop(sample_motif(earlier=EarlierSide(rounds=2, side_cm=7.5)))
SEWN = MotifJoin(method=JoinMethod.WHIPSTITCH, colour="oat", needleful_cm=140)
SQUARES = order_text(
    squares_order(body=sample_squares(FIVE, FIVE[::-1], columns=8, rows=11, join=SEWN)),
    Vocabulary.US,
)
CENTRE = order_text(centre_order(body=sample_centre("teal", "rust", rounds_each=2)), Vocabulary.US)
MOTIFS = workshop_text(WORKSHOP, Vocabulary.US)


def mistakes_of(text: str, *edits: tuple[str, str]) -> dict[str, str]:
    """Return the codes of an order's mistakes by place, as it is read or then quoted."""

    def quoted() -> Quote:
        order = load_order_text(edited(text, edits), WORKSHOP)
        return quote_order(order, WORKSHOP, today=TODAY)

    mistakes = found(quoted)
    assert all(is_told(mistake) for mistake in mistakes.values())
    return {place: mistake.code.value for place, mistake in mistakes.items()}


def is_told(mistake: Mistake) -> bool:
    """Return whether a mistake is told as a sentence whose facts are all filled in."""
    sentence = mistake_sentence(mistake, speech_of(WORKSHOP))
    return sentence.endswith((".", "?")) and "{" not in sentence


def test_the_files_are_right_before_they_are_spoilt() -> None:
    for text in (SQUARES, CENTRE):
        assert quote_order(load_order_text(text, WORKSHOP), WORKSHOP, today=TODAY)
    assert load_workshop_text(MOTIFS) == WORKSHOP


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        ('"teal",\n    "rust",', '"rust",', "layouts.1.colours", "colours-not-rounds"),
        (
            '"teal",\n    "rust",',
            '"rust", "oat", "oat",',
            "layouts.1.colours",
            "colours-not-rounds",
        ),
        ('"teal",\n    "rust",', '"lime", "rust",', "layouts.1.colours.1", "unknown-colour"),
        ("colours = [", "share = -1\ncolours = [", "layouts.1.share", "not-above"),
        ("colours = [", "count = 0\ncolours = [", "layouts.1.count", "too-small"),
        ("colours = [", "count = 89\ncolours = [", "layouts", "counts-do-not-add"),
        ("colours = [", "count = 9\nshare = 2\ncolours = [", "layouts.1.count", "share-and-count"),
        ('motif = "fen square"', 'motif = "tor"', "motif", "unknown-motif"),
        ('motif = "fen square"', 'motif = ""', "motif", "missing"),
        ('motif = "fen square"', 'motif = "fen square"\nrounds = 0', "rounds", "too-small"),
        ('motif = "fen square"', 'motif = "fen square"\nrounds = 101', "rounds", "too-large"),
        ("columns = 8", "columns = 0", "columns", "too-small"),
        ("columns = 8", "columns = 201", "columns", "too-large"),
        ("columns = 8", 'columns = "8"', "columns", "wrong-type"),
        ('"140 cm"', '"0 cm"', "join.needleful", "not-above"),
        ('"140 cm"', '"5 cm"', "join.needleful", "too-small"),
        ('"140 cm"', '"nan cm"', "join.needleful", "not-finite"),
        ('"whipstitch"', '"whipstich"', "join.method", "not-one-of"),
        *(
            ('"whipstitch"', f'"{method.value}"', "join.needleful", "sewn-alone")
            for method in JoinMethod
            if method not in (JoinMethod.WHIPSTITCH, JoinMethod.MATTRESS)
        ),
        (
            'method = "whipstitch"\ncolour = "oat"\nneedleful = "140 cm"',
            'method = "continuous"\ncolour = "oat"',
            "join.colour",
            "one-last-colour",
        ),
        ('colour = "oat"\nneedle', "needle", "join.colour", "missing"),
        (
            "[blanket.squares.join]",
            '[blanket.squares.pool]\ncolours = ["oat"]\n\n[blanket.squares.join]',
            "pool",
            "layouts-or-pool",
        ),
        ("[blanket.squares]", "[blanket.squares]\nstripes = []", "stripes", "unknown-key"),
    ],
)
def test_squares_that_cannot_be_are_told(old: str, new: str, place: str, code: str) -> None:
    assert mistakes_of(SQUARES, (old, new)) == {f"blanket.squares.{place}": code}


def test_a_layout_has_a_share_above_nothing_beside_others_too() -> None:
    one = SQUARES.replace("colours = [", "share = 0\ncolours = [", 1)
    assert mistakes_of(one) == {"blanket.squares.layouts.1.share": "not-above"}


def test_squares_have_layouts_or_a_pool() -> None:
    head, tail = SQUARES.split("[[blanket.squares.layouts]]", 1)
    bare = head + "[blanket.squares.join]" + tail.split("[blanket.squares.join]")[1]
    assert mistakes_of(bare) == {"blanket.squares.layouts": "missing"}


@pytest.mark.parametrize("width", ["7 cm", "5 cm"])
def test_a_size_of_less_than_a_motif_is_told(width: str) -> None:
    """Under half of one beside its border; and under the border alone."""
    sized = SQUARES.replace("columns = 8\nrows = 11\n", "").replace("130 cm", width)
    assert mistakes_of(sized) == {"blanket.width": "less-than-a-motif"}


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        ('"75 cm"', '"0.5 cm"', "width", "less-than-a-round"),
        ('"90 cm"', '"0.5 cm"', "height", "less-than-a-round"),
        ('"solid"', '"spiral"', "centre.counting", "not-one-of"),
        ('"solid"', '"sollid"\nfirst_side = 2', "centre.counting", "not-one-of"),
        ('"solid"', '"clustres"\nside_chains = 2', "centre.counting", "not-one-of"),
        ('"solid"', '"hexagone"\nstarts_on = 2', "centre.counting", "not-one-of"),
        (
            'rounds = 2 },\n    { colour = "rust"',
            'rounds = 0 },\n    { colour = "rust"',
            "centre.stripes.1.rounds",
            "too-small",
        ),
        ('colour = "rust"', 'colour = "lime"', "centre.stripes.2.colour", "unknown-colour"),
        ("counting =", "rounds = 0\ncounting =", "centre.rounds", "too-small"),
        ("counting =", "rounds = 1001\ncounting =", "centre.rounds", "too-many-rounds"),
        (
            "counting =",
            "rounds = 9\nrepeats = 3\ncounting =",
            "centre.repeats",
            "rounds-and-repeats",
        ),
        (
            "counting =",
            "fitted = true\nrepeats = 3\ncounting =",
            "centre.repeats",
            "fitted-and-repeats",
        ),
        ("counting =", "first_side = 1\ncounting =", "centre.first_side", "too-small"),
        ('"solid"', '"clusters"\nside_chains = 6', "centre.side_chains", "too-large"),
        ('"solid"', '"clusters"\nfirst_side = 2', "centre.first_side", "solid-alone"),
        ('"solid"', '"hexagon"\nfirst_side = 3', "centre.first_side", "solid-alone"),
        ('"solid"', '"solid"\nside_chains = 0', "centre.side_chains", "clusters-alone"),
        ('"solid"', '"circle"\nside_chains = 2', "centre.side_chains", "clusters-alone"),
        ("counting =", "starts_on = -1\ncounting =", "centre.starts_on", "too-small"),
        ("counting =", "starts_on = 2001\ncounting =", "centre.starts_on", "too-large"),
        ("counting =", 'motif = "tor"\ncounting =', "centre.motif", "unknown-motif"),
        (
            "counting =",
            'motif = "fen square"\ncounting =',
            "centre.motif",
            "motif-counted-otherwise",
        ),
    ],
)
def test_rounds_that_cannot_be_are_told(old: str, new: str, place: str, code: str) -> None:
    assert mistakes_of(CENTRE, (old, new)) == {f"blanket.{place}": code}


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        ('side = "15 cm"', 'side = "0 cm"', "side", "not-above"),
        ('side = "15 cm"\n', "", "side", "side-or-two-joined"),
        ('side = "15 cm"', 'side = "15 cm"\ntwo_joined = "30 cm"', "side", "side-or-two-joined"),
        (
            'counting = "clusters"\nrounds = 5',
            'counting = "clusters"\nrounds = 0',
            "rounds",
            "too-small",
        ),
        ('counting = "clusters"', 'counting = "moss"', "counting", "not-one-of"),
        ('"clusters"', '"clustres"\nside_chains = 2\nfirst_side = 2', "counting", "not-one-of"),
        ("rounds = 5", "rounds = 5\nfirst_side = 2", "first_side", "solid-alone"),
        ('"clusters"', '"solid"\nside_chains = 3', "side_chains", "clusters-alone"),
        ('[motifs.weighed]\nmotifs = 5\nweight = "60 g"\n', "", "weighed", "weighed-or-unravelled"),
        (
            'weight = "60 g"\n\n[motifs.earlier]',
            'weight = "0 g"\n\n[motifs.earlier]',
            "weighed.weight",
            "not-above",
        ),
        (
            "[motifs.weighed]\nmotifs = 5",
            "[motifs.weighed]\nmotifs = 0",
            "weighed.motifs",
            "too-small",
        ),
        ('side = "7.5 cm"', 'side = "15 cm"', "earlier.side", "sides-do-not-fit"),
        ('rounds = 2\nside = "7.5', 'rounds = 5\nside = "7.5', "earlier.rounds", "not-earlier"),
        ('name = "fen square"', 'name = "sc"', "name", "name-of-a-stitch"),
        (
            'name = "fen square"\nyarn = "moor aran"',
            'name = "fen square"\nyarn = "silk"',
            "yarn",
            "unknown-yarn",
        ),
        (
            'side = "15 cm"',
            'side = "15 cm"\nmetres_by_round = ["1 m"]',
            "metres_by_round",
            "not-one-a-round",
        ),
        ("motifs = 4, minutes = 80", "motifs = 4, minutes = 0", "timings.1.minutes", "not-above"),
    ],
)
def test_motifs_that_cannot_be_are_told(old: str, new: str, place: str, code: str) -> None:
    mistakes = found(lambda: load_workshop_text(edited(MOTIFS, ((old, new),))))
    assert all(is_told(mistake) for mistake in mistakes.values())
    codes = {where: mistake.code.value for where, mistake in mistakes.items()}
    assert codes == {f"motifs.1.{place}": code}


def some_spoilt(text: str, under: str) -> st.SearchStrategy[Any]:
    """Return tables with one or two values under a key put otherwise."""
    content = load_toml(text)
    paths = [path for path in places_in(content) if under in path]
    changes = st.lists(st.tuples(st.sampled_from(paths), anything), min_size=1, max_size=2)

    def spoil(changes: list[tuple[Any, Any]]) -> Any:
        table = content
        for path, value in changes:
            with suppress(KeyError, IndexError, TypeError):
                table = spoilt(table, path, value)
        return table

    return changes.map(spoil)


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=60)
@given(some_spoilt(SQUARES, "blanket") | some_spoilt(CENTRE, "blanket"))
def test_any_table_is_an_order_that_is_quoted_or_is_refused(table: Any) -> None:
    with suppress(Refused):
        order = read_order(table, WORKSHOP)
        assert isinstance(order, Order)
        assert quote_order(order, WORKSHOP, today=TODAY)


@settings(suppress_health_check=[HealthCheck.too_slow], max_examples=60)
@given(some_spoilt(MOTIFS, "motifs"))
def test_any_table_is_a_workshop_that_quotes_or_is_refused(table: Any) -> None:
    with suppress(Refused):
        workshop = read_workshop(table, any_locale)
        assert isinstance(workshop, Workshop)
        assert quote_order(squares_order(), workshop, today=TODAY)


counts = st.integers(1, 60)


@settings(max_examples=60)
@given(st.floats(0.1, 1000), st.floats(0.1, 1000), counts, st.sampled_from(JoinMethod))
def test_any_size_of_squares_is_quoted_or_refused(
    width_cm: float, height_cm: float, rounds: int, method: JoinMethod
) -> None:
    body = sample_squares(("oat",) * rounds, rounds=rounds, method=method)
    order = squares_order(width_cm=width_cm, height_cm=height_cm, body=body)
    with suppress(Refused):
        assert quote_order(order, WORKSHOP, today=TODAY)
