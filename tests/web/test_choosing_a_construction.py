"""The construction is chosen at the top of the design; what was typed of another stays with her."""

from __future__ import annotations

import pytest

from tests.web.conftest import ORDER
from tests.web.motif_orders import MotifMaker, motif_workshop
from tests.web.pages import Page

CHOICE = "blanket.construction"


@pytest.fixture
def maker() -> MotifMaker:
    return MotifMaker(ORDER)


def choose(maker: MotifMaker, page: Page, word: str, **typed: str) -> Page:
    """Choose a construction by the button beside it."""
    return maker.sends(page, blanket__construction=word, do="construction", **typed)


def test_it_is_asked_first_and_in_words(maker: MotifMaker) -> None:
    first = next(maker.open().with_id("order").all("fieldset"))
    assert [option.text for option in first.all("option")] == [
        "in rows, from edge to edge",
        "from the centre outwards",
        "in motifs that are joined",
    ]
    assert next(first.all("button")).attributes["value"] == "construction"


@pytest.mark.parametrize("word", ["centre", "squares"])
def test_one_that_is_new_begins_with_an_answer(maker: MotifMaker, word: str) -> None:
    page = choose(maker, maker.open(), word)
    assert page.with_id("mistakes").text == ""
    assert page.figure("Price").startswith("£")


@pytest.mark.parametrize("word", ["centre", "squares"])
def test_whoever_comes_back_finds_all_as_it_was(maker: MotifMaker, word: str) -> None:
    before = maker.open()
    there = choose(maker, before, word)
    back = choose(maker, there, "rows")
    assert back.figure("Price") == before.figure("Price")
    typed, was = back.typed(), before.typed()
    assert {name: typed[name] for name in was} == was | {"csrf_token": typed["csrf_token"]}
    again = choose(maker, back, word)
    assert again.figure("Price") == there.figure("Price")


def test_what_all_constructions_have_in_common_goes_along(maker: MotifMaker) -> None:
    page = choose(maker, maker.open(), "squares", order__notes="Soft, please")
    typed = page.typed()
    assert typed["order.notes"] == "Soft, please"
    assert typed["blanket.width"] == "80 cm"
    assert typed["blanket.border.1.colour"] == "oat"


def test_nothing_that_rests_is_read_into_the_order(maker: MotifMaker) -> None:
    page = choose(maker, maker.open(), "centre")
    page = maker.sends(page, blanket__sections__1__stripes__1__colour="puce")
    assert page.with_id("mistakes").text == ""
    text = maker.file_of(page)
    assert "[blanket.centre]" in text
    assert "sections" not in text


def test_lines_that_rest_take_no_room_from_those_that_are_asked(maker: MotifMaker) -> None:
    page = maker.open()
    many = {f"blanket.sections.1.stripes.{n}.colour": "oat" for n in range(1, 900)}
    fields = page.typed() | many | {CHOICE: "centre", "do": "construction"}
    answer = Page(maker.client.post("/", data=fields).text)
    assert answer.with_id("mistakes").text == ""
    assert answer.typed()["blanket.sections.1.stripes.899.colour"] == "oat"


def test_no_stitch_is_asked_of_squares_and_that_of_the_rows_comes_back(maker: MotifMaker) -> None:
    squares = choose(maker, maker.open(), "squares")
    with pytest.raises(LookupError):
        squares.labelled("Stitch or pattern")
    assert 'stitch = "dc"' in maker.file_of(squares)
    rows = choose(maker, squares, "rows")
    assert rows.typed()["blanket.stitch"] == "hdc"


def test_a_change_is_answered_as_one_types_before_the_form_is_there(maker: MotifMaker) -> None:
    fields = maker.open().typed() | {CHOICE: "centre"}
    reply = Page(maker.client.post("/answer", data=fields).text)
    assert "rounds" in reply.with_id("answer").text


def test_without_a_motif_the_way_to_measure_one_is_shown() -> None:
    maker = MotifMaker(ORDER, motif_workshop(motifs=()))
    page = choose(maker, maker.open(), "squares")
    (link,) = page.root.all(lambda n: "measurements" in n.text and n.tag == "a" and "Put" in n.text)
    assert link.attributes["href"] == "/measurements"
    assert "Motif" in page.with_id("mistakes").text
    assert choose(maker, page, "rows").figure("Price") == maker.open().figure("Price")


@pytest.mark.parametrize("ends", ["worked over", "enclosed", "fringe"])
@pytest.mark.parametrize("word", ["rows", "centre", "squares"])
def test_what_becomes_of_the_ends_is_asked_of_every_construction(
    maker: MotifMaker, word: str, ends: str
) -> None:
    page = choose(maker, maker.open(), word, blanket__ends=ends)
    assert page.typed()["blanket.ends"] == ends
    assert f'ends = "{ends}"' in maker.file_of(page)


def test_ends_that_are_enclosed_in_no_border_are_told_beside_their_field(maker: MotifMaker) -> None:
    fields = {n: t for n, t in maker.open().typed().items() if not n.startswith("blanket.border")}
    page = Page(maker.client.post("/", data=fields | {"blanket.ends": "enclosed"}).text)
    assert "there is none" in page.said_of("blanket.ends")
