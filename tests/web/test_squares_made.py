"""An order of squares while it is made: a motif is a tick, and all pages count motifs and seams."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.making.log_lines import EndsWoven, RowsReached, Session
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.order.order import Order
from quoting.core.order.stage import Stage
from quoting.core.workshop.motifs import WeighedMotifs
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import order_text
from quoting.store.order_content import OrderContent
from quoting.store.orders import change_stage, create_order
from quoting.store.workshops import current_workshop
from quoting.web.statuses import REFUSED
from tests.constructed import constructed_order, from_centre, motif_workshop, squares
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import lines_of, put_at, tell
from tests.web.pages import Page


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    with maker_with_book(tmp_path / "book.db", motif_workshop()) as maker:
        yield maker


def on_the_hook(maker: BookMaker, order: Order) -> str:
    """Keep an order that is on the hook, and return its address."""
    content = OrderContent(title=order.title, buyer=order.buyer, order=order)
    now = maker.clock()
    kept = create_order(maker.book, content, now=now, stage=Stage.ON_THE_HOOK)
    return f"/orders/{kept.id}"


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return twelve motifs and five seams, of which nothing is done."""
    body = squares(JoinMethod.SINGLE_CROCHET)
    return on_the_hook(maker, constructed_order(body, ends=EndsBecome.WORKED_OVER))


def text_of(page: Page) -> str:
    return " ".join(page.root.text.replace("\u00a0", " ").split())


def weighed_now(maker: BookMaker) -> WeighedMotifs:
    kept = current_workshop(maker.book)
    assert kept is not None
    weighed = kept.workshop.motif("sun").weighed
    assert weighed is not None
    return weighed


def tick(maker: BookMaker, address: str) -> str:
    row = f"{address}/guide/row"
    sent = maker.open(row).typed("tick")
    return text_of(Page(maker.client.post(row, data=sent, follow_redirects=True).text))


def test_one_motif_is_shown_with_all_its_rounds_and_ticked_as_one(
    maker: BookMaker, address: str
) -> None:
    shown = text_of(maker.open(f"{address}/guide/row"))
    assert "Motif 1 of 12, layout 1" in shown
    assert "Teal, round 1: 12 dc in 4 clusters." in shown
    assert "It leaves 10 ends to work over." in shown
    assert "Several motifs, seams and rounds at once" in shown
    after = tick(maker, address)
    assert "Motif 2 of 12, layout 1" in after
    assert "1 of 18 motifs, seams and rounds done" in after
    assert [line.rows for line in lines_of(maker, address) if isinstance(line, RowsReached)] == [1]


def test_a_colour_is_told_with_its_dot_in_one_piece(maker: BookMaker, address: str) -> None:
    row = maker.open(f"{address}/guide/row").root
    told = [span for span in row.all("span") if span.attributes.get("class") == "colour"]
    assert told
    assert all(any(span.all("svg")) and span.text.strip().endswith(",") for span in told)


def test_after_the_motifs_come_the_seams(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="12", minutes="240")
    shown = text_of(maker.open(f"{address}/guide/row"))
    assert "Seam 1 of 5" in shown
    assert "It joins 4 edges between two columns." in shown
    assert "Border round 1" in tick_until(maker, address, 5)


def tick_until(maker: BookMaker, address: str, times: int) -> str:
    said = ""
    for _ in range(times):
        said = tick(maker, address)
    return said


def test_all_of_it_done_is_said_in_its_own_words(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="18", minutes="400")
    assert "All motifs, seams and rounds are done" in text_of(maker.open(f"{address}/guide/row"))


def test_a_sitting_of_motifs_and_ends_is_told_in_their_words(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="6", minutes="130")
    tell(maker, address, ends="40", minutes="16", doing="weaving-in")
    shown = text_of(maker.open(f"{address}/making"))
    assert "At the hook, laying out and joining, 2 h 10 min, motifs 1 to 6" in shown
    assert "40 ends worked over" in shown
    assert "Working over ends, 16 min" in shown
    assert "Done so far" in shown
    assert "Yarn used up, ends worked over" in shown
    assert "Ends worked over" in shown
    assert "Next: motif 7 of 12, " in shown
    assert {type(line) for line in lines_of(maker, address)} == {Session, EndsWoven}
    assert not {"woven", "Weaving"} & set(shown.split())


def test_more_than_there_is_is_refused_beside_its_field(maker: BookMaker, address: str) -> None:
    reply = tell(maker, address, rows="19", minutes="400")
    assert reply.status_code == REFUSED
    assert lines_of(maker, address) == []


def test_a_line_of_motifs_is_corrected_in_their_words(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="6", minutes="130")
    (link,) = (
        a.attributes["href"]
        for a in maker.open(f"{address}/making").root.all("a")
        if a.text == "Correct"
    )
    shown = text_of(maker.open(str(link)))
    assert "From number, of motifs, seams and rounds" in shown


def test_what_its_sessions_tell_of_the_motif_is_offered_and_taken_in(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="12", minutes="300")
    tell(maker, address, ends="100", minutes="40", doing="weaving-in")
    change_stage(maker.book, int(address.rsplit("/", 1)[1]), Stage.FINISHED, now=maker.clock())
    page = maker.open(f"{address}/took")
    assert "12 of sun in " in text_of(page)
    assert "an end worked over took 0.4 min" in text_of(page)
    maker.client.post(f"{address}/took", data=page.typed("learnt"))
    again = text_of(maker.open(f"{address}/took"))
    assert "12 of sun in " not in again


def test_what_a_motif_took_stands_beside_what_was_expected(maker: BookMaker, address: str) -> None:
    """Twenty minutes each were timed; more than that was written down at the hook."""
    before = maker.open(f"{address}/took")
    assert "Minutes a motif" not in before.root.text
    tell(maker, address, rows="18", minutes="600")
    put_at(maker, address, "finished")
    (row,) = maker.open(f"{address}/took").table("Pace")[1:]
    name, expected, took, off = row
    assert name.startswith("Minutes a motif, ")
    assert expected == "20"
    assert float(took) > 30
    assert re.fullmatch(rf"{float(took) - 20:g} more, \d+%", off)


def test_what_its_yarn_tells_of_the_motifs_weight_is_offered_and_taken_in(
    maker: BookMaker,
) -> None:
    before = weighed_now(maker)
    file = order_text(constructed_order(squares(JoinMethod.SINGLE_CROCHET)), Vocabulary.US)
    address = maker.hand_in("/orders/read", "/orders", file).location
    given = maker.give(address).location
    maker.press(f"{given}/accept", given)
    put_at(maker, address, "on-the-hook")
    fields = maker.open(f"{address}/making").typed("sitting")
    used = {name: "90" for name in fields if re.fullmatch(r"used\.\d+\.amount", name)}
    used |= {name: "" for name in fields if name.endswith(".ball_g")}
    tell(maker, address, rows="18", minutes="600", **used)
    put_at(maker, address, "finished")
    page = maker.open(f"{address}/took")
    assert "12 of sun weigh " in text_of(page)
    maker.client.post(f"{address}/took", data=page.typed("learnt"))
    after = weighed_now(maker)
    assert after.motifs == before.motifs + 12
    assert after.weight_g / after.motifs > before.weight_g / before.motifs
    assert "12 of sun weigh " not in text_of(maker.open(f"{address}/took"))


def test_where_no_quote_was_agreed_no_weight_is_offered_again_and_again(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="18", minutes="600", used__1__amount="90", used__1__ball_g="")
    put_at(maker, address, "finished")
    offered = text_of(maker.open(f"{address}/took"))
    assert "12 of sun in " in offered
    assert "of sun weigh " not in offered


def test_the_guide_of_squares_is_a_page_with_its_motifs_and_seams(
    maker: BookMaker, address: str
) -> None:
    shown = text_of(maker.open(f"{address}/guide"))
    for said in (
        "A motif, round by round",
        "Make 4 of layout 1: round 1 teal, round 2 rust, round 3 plum, round 4 moss, round 5 oat.",
        "Where each lies",
        "Seams 1 to 2, between columns: oat, 4 edges and 84 sc each.",
        "Ends to work over",
        "Lay each end along the top of the stitches",
    ):
        assert said in shown


def test_a_piece_from_the_centre_is_ticked_round_by_round(maker: BookMaker) -> None:
    address = on_the_hook(maker, constructed_order(from_centre()))
    shown = text_of(maker.open(f"{address}/guide/row"))
    assert "Round 1" in shown
    assert "Several rounds at once" in shown
    assert "rounds done" in tick(maker, address)
    assert "Round 2" in text_of(maker.open(f"{address}/guide/row"))
