"""Pieces from the centre and joined motifs in a book, on Sizes, and as what is made of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, Layout
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_order_text, order_text
from tests.motif_examples import striped_centre
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.motif_orders import (
    FEN,
    REED,
    MotifMaker,
    motif_workshop,
    order_of,
    squares_body,
)
from tests.web.pages import Page

BODIES = pytest.mark.parametrize(
    "body", [striped_centre(), squares_body()], ids=["centre", "squares"]
)


@BODIES
def test_a_book_keeps_it_and_what_rests_beside_it(
    body: FromCentre | JoinedSquares, tmp_path: Path
) -> None:
    with maker_with_book(tmp_path / "book.db", motif_workshop()) as maker:
        address = maker.begin()
        file = order_text(order_of(body), Vocabulary.US)
        read = maker.hand_in("/read", address, file)
        page = maker.open(read.location)
        assert page.with_id("mistakes").text == ""
        fields = page.typed() | {"blanket.construction": "rows", "do": "construction"}
        rows = Page(maker.client.post(read.location, data=fields).text)
        assert "Stripes" in rows.with_id("order").text
        opened = maker.open(read.location)
        back = opened.typed() | {"blanket.construction": page.typed()["blanket.construction"]}
        again = Page(maker.client.post(read.location, data=back | {"do": "construction"}).text)
        assert again.figure("Price") == page.figure("Price")


@BODIES
def test_sizes_compares_it_and_leads_back_with_all_that_was_typed(
    body: FromCentre | JoinedSquares,
) -> None:
    order = order_of(body)
    maker = MotifMaker(order)
    page = maker.open()
    sizes = maker.sends(page, "/sizes/of-order")
    assert maker.status == 200
    assert len(sizes.table("Size")) > 2
    carried = [n for n in sizes.root.all("input") if n.attributes.get("name") == "order_file"]
    assert load_order_text(carried[0].attributes["value"], motif_workshop()) == order


@BODIES
def test_the_quote_the_message_and_the_guide_are_made_of_it(
    body: FromCentre | JoinedSquares,
) -> None:
    maker = MotifMaker(order_of(body))
    fields = maker.open().typed()
    for address in ("/quote", "/quote/message", "/guide"):
        assert maker.client.post(address, data=fields).status_code == 200


def without_motifs(maker: BookMaker, *names: str) -> int:
    """Take motifs out on the page of measurements, save, and return the answer's status."""
    page = maker.open("/measurements")
    for name in names:
        fields = page.typed("own")
        field = next(f for f, text in fields.items() if f.endswith(".name") and text == name)
        fields |= {"do": f"remove {field.removesuffix('.name')}"}
        page = Page(maker.client.post("/measurements", data=fields).text)
    fields = page.typed("own") | {"do": "save"}
    return maker.client.post("/measurements", data=fields, follow_redirects=True).status_code


@pytest.mark.parametrize("gone", [(REED.name,), (FEN.name, REED.name)], ids=["one", "all"])
def test_a_motif_that_rests_may_go_and_is_told_as_gone_once_it_is_chosen_again(
    gone: tuple[str, ...], tmp_path: Path
) -> None:
    """Nothing else of what rests is lost, and while it is chosen the motif may not be taken out."""
    body = squares_body(motif=REED.name, layouts=(Layout(colours=("teal", "rust", "oat")),))
    with maker_with_book(tmp_path / "book.db", motif_workshop()) as maker:
        file = order_text(order_of(body), Vocabulary.US)
        kept = maker.hand_in("/read", maker.begin(), file).location
        before = maker.open(kept).typed()
        unfinished = before | {"blanket.width": ""}
        maker.client.post(kept, data=unfinished | {"do": "save"})
        assert without_motifs(maker, *gone) == 422
        in_rows = maker.open(kept).typed() | {"blanket.construction": "rows", "do": "construction"}
        maker.client.post(kept, data=in_rows)
        assert without_motifs(maker, *gone) == 200
        back = maker.open(kept).typed() | {"blanket.construction": "squares", "do": "construction"}
        again = Page(maker.client.post(kept, data=back).text)
        assert "has no motif “reed square”" in again.said_of("blanket.squares.motif")
        fields = {name: text for name, text in before.items() if name.startswith("blanket.squares")}
        assert fields["blanket.squares.motif"] == REED.name
        assert fields.items() <= again.typed().items()
