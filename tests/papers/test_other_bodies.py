"""Papers of motifs and of pieces from the centre: whole on page, PDF and message, on one sheet."""

from __future__ import annotations

from dataclasses import replace

import pytest

from exports.papers.choices import card_of
from exports.papers.message import paper_text
from exports.papers.offers import given_paper, quote_paper
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.order.order import Order
from quoting.core.quote.offer import offer_of
from quoting.core.quote.quote import Quote
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.rounds import Counting
from quoting.web import create_app
from quoting.web.papers.showing import paper_page
from quoting.web.shop import open_shop
from quoting.wording.paper import Paper
from tests.examples import TODAY, band, sample_quote, sample_workshop
from tests.motif_examples import (
    FIVE,
    centre_order,
    motif_workshop,
    sample_centre,
    sample_squares,
    squares_order,
)
from tests.papers.reading import read_pdf
from tests.workbook.constructions import motif_shop, order_of, squares

ALL_TOLD = Documents(
    stitches=True, rows=True, yarn=True, ends=True, hours=True, size_within_cm=2, change_days=7
)
SQUARES = squares_order(body=sample_squares(FIVE, ("plum", "moss", "teal", "rust", "oat")))


def quoted(order: Order) -> Quote:
    return sample_quote(order, motif_workshop(documents=ALL_TOLD))


def round_order(counting: Counting) -> Order:
    """Return an order of a piece from the centre, 1 m across, with a border."""
    body = sample_centre("teal", "rust", counting=counting)
    return centre_order(body=body, width_cm=100, height_cm=100, border=(band("hdc", rounds=2),))


def page_of(paper: Paper) -> str:
    app = create_app(open_shop(sample_workshop(), today=lambda: TODAY))
    with app.test_request_context():
        return paper_page(paper)


@pytest.mark.parametrize(
    ("order", "told"),
    [
        (
            SQUARES,
            "8 across and 11 down, worked in clusters of stitches with spaces between them, ",
        ),
        (SQUARES, "in 2 layouts of colours"),
        (round_order(Counting.CIRCLE), "a circle in one piece, in rounds from the centre"),
        (round_order(Counting.HEXAGON), "from side to side"),
        (centre_order(), "in one piece, in rounds from the centre, worked solid"),
    ],
)
def test_what_is_made_stands_on_page_and_message_and_all_of_it_on_one_sheet(
    order: Order, told: str
) -> None:
    paper = quote_paper(quoted(order))
    assert told in page_of(paper).replace("\u00a0", " ")
    assert told in paper_text(paper)
    assert len(read_pdf(paper).pages) == 1


def test_a_quote_of_motifs_that_was_given_has_the_drawing_of_its_page_to_the_letter() -> None:
    quote = quoted(SQUARES)
    paper = quote_paper(quote)
    assert given_paper(offer_of(quote), page_of(paper)) == paper


@pytest.mark.parametrize("language", ["de", "es", "fr", "nl"])
def test_in_every_language_it_is_one_sheet(language: str) -> None:
    paper = quote_paper(quoted(replace(SQUARES, language=language)))
    assert len(read_pdf(paper).pages) == 1


def test_a_card_of_choices_holds_motifs_and_a_circle_side_by_side_on_one_sheet() -> None:
    smaller = replace(SQUARES, design=replace(SQUARES.design, width_cm=100, height_cm=115))
    paper = card_of([quoted(SQUARES), quoted(smaller), quoted(round_order(Counting.CIRCLE))])
    page = page_of(paper)
    assert "cm across, border included" in page
    assert page.count('id="choice-1-1"') == page.count('id="choice-2-1"') == 1
    assert len(read_pdf(paper).pages) == 1


def test_a_card_of_three_choices_is_one_sheet_in_a_language_of_long_words() -> None:
    workshop = motif_shop(documents=ALL_TOLD)
    bodies = (squares(), squares(JoinMethod.FLAT_BRAID), squares(columns=5, rows=6))
    orders = [replace(order_of(body), language="de") for body in bodies]
    paper = card_of([sample_quote(order, workshop) for order in orders])
    assert len(read_pdf(paper).pages) == 1
