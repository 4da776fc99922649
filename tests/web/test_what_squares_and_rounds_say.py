"""The answer for squares and for rounds says of them what is so, and nothing of rows."""

from __future__ import annotations

from quoting.core.workshop.rounds import Counting
from tests.motif_examples import striped_centre
from tests.web.motif_orders import FEN, MotifMaker, order_of, squares_body, text_of


def test_yarn_by_a_motif_of_other_rounds_is_not_said_to_be_of_no_swatch() -> None:
    body = striped_centre(counting=Counting.CLUSTERS, motif=FEN.name)
    said = text_of(MotifMaker(order_of(body, width_cm=80, height_cm=80)).open(), "yarn")
    assert "There is no swatch in dc" not in said
    assert "The yarn goes by the motif fen square" in said
    assert "may be 10% off" in said


def test_yarn_of_motifs_as_they_were_weighed_is_measured() -> None:
    said = text_of(MotifMaker(order_of(squares_body())).open(), "yarn")
    assert "goes by the motif" not in said


def test_many_ends_are_grouped_among_the_figures_too() -> None:
    page = MotifMaker(order_of(squares_body(), width_cm=200, height_cm=200)).open()
    assert page.figure("Ends to weave").startswith("1,")
