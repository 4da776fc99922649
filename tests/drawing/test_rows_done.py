"""A bar of the rows shows how far a blanket is, in the colours of its rows."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from exports.drawing.rows_done import FAINT, WIDTH, draw_rows_done
from quoting.core.plan.passes import Work
from tests.drawing.pictures import of_class, words_of
from tests.examples import COLOURS, sample_quote
from tests.motif_examples import FIVE, motif_workshop, sample_squares, squares_order

QUOTE = sample_quote()
ROWS = sum(worked.work is not Work.CHAIN for worked in QUOTE.plan.passes)


def drawn(done: int) -> ET.Element:
    return ET.fromstring(draw_rows_done(QUOTE, done, f"{done} of {ROWS} rows done."))


def width_of(picture: ET.Element, name: str) -> float:
    bands = (re.findall(r"h(\d+)v", path.get("d") or "") for path in of_class(picture, name))
    return sum(float(width) for found in bands for width in found)


@pytest.mark.parametrize("done", [0, 1, ROWS // 2, ROWS])
def test_what_is_done_has_its_share_of_the_bar(done: int) -> None:
    picture = drawn(done)
    assert width_of(picture, "done") == pytest.approx(WIDTH * done / ROWS, abs=1)
    assert width_of(picture, "done") + width_of(picture, "to-come") == WIDTH


def test_the_bar_has_the_colours_of_the_rows_and_what_is_to_come_is_faint() -> None:
    picture = drawn(ROWS // 2)
    for name in ("done", "to-come"):
        assert {path.get("fill") for path in of_class(picture, name)} <= set(COLOURS.values())
    assert {path.get("fill-opacity") for path in of_class(picture, "to-come")} == {str(FAINT)}


def test_the_bar_says_in_words_what_it_shows() -> None:
    assert f"12 of {ROWS} rows done." in words_of(drawn(12))


def test_of_motifs_each_is_shown_with_its_rounds_and_is_done_at_once() -> None:
    body = sample_squares(FIVE, columns=8, rows=11)
    quote = sample_quote(squares_order(body=body, border=()), motif_workshop())
    picture = ET.fromstring(draw_rows_done(quote, 44, "44 of 88 motifs done."))
    assert width_of(picture, "done") == pytest.approx(WIDTH / 2, abs=1)
    assert {path.get("fill") for path in of_class(picture, "done")} == {
        COLOURS[colour] for colour in FIVE
    }


def test_a_bar_of_hundreds_of_motifs_stays_small() -> None:
    body = sample_squares(FIVE, columns=20, rows=20)
    quote = sample_quote(squares_order(body=body), motif_workshop())
    assert len(draw_rows_done(quote, 200, "Half of it is done.")) < 15_000
