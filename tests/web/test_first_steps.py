"""A book without a workshop, and a workshop that changes while its pages are served."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from unittest.mock import patch

import pytest

from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import workshop_text
from quoting.store.shelf import lots_on_shelf, weigh_lot
from quoting.store.workshops import current_workshop, save_workshop, workshop_versions
from tests.examples import sample_workshop
from tests.web.book_pages import BEGINNING, BookMaker, maker_with_book

FILE = workshop_text(sample_workshop(), Vocabulary.US)


@pytest.fixture
def beginner(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose book is empty."""
    with maker_with_book(tmp_path / "book.db") as maker:
        yield maker


@pytest.fixture
def settled(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.mark.parametrize("address", ["/sizes", "/measurements", "/yarn", "/workshop"])
def test_every_page_of_an_empty_book_leads_to_first_steps(
    address: str, beginner: BookMaker
) -> None:
    reply = beginner.client.get(address)
    assert (reply.status_code, reply.location) == (303, "/first-steps")
    page = beginner.open("/first-steps")
    assert "No figures are entered yet" in page.root.text
    assert not list(page.root.all("nav"))


def test_a_page_that_is_not_there_is_told_in_an_empty_book_too(beginner: BookMaker) -> None:
    assert "There is no such page" in beginner.open("/nowhere").root.text
    assert beginner.status == 404


def test_a_workshop_file_becomes_the_books_workshop(beginner: BookMaker) -> None:
    reply = beginner.hand_in("/first-steps/read", "/first-steps", FILE)
    assert (reply.status_code, reply.location) == (303, "/workshop")
    kept = current_workshop(beginner.book)
    assert kept is not None
    assert kept.workshop == sample_workshop()
    assert "Ottermoor Blankets" in beginner.open("/workshop").root.text
    assert beginner.client.get("/first-steps").location == "/workshop"


def test_a_workshop_file_with_mistakes_is_refused_with_all_of_them(beginner: BookMaker) -> None:
    bad = FILE.replace('currency = "GBP"', 'currency = "XYZ"').replace(
        "[workshop]", "[workshop]\nno = 1"
    )
    reply = beginner.hand_in("/first-steps/read", "/first-steps", bad)
    assert reply.status_code == 422
    assert "workshop.currency" in reply.text
    assert "workshop.no" in reply.text
    assert workshop_versions(beginner.book) == ()


def test_a_saved_workshop_shows_at_the_next_request(settled: BookMaker) -> None:
    assert "Ottermoor Blankets" in settled.open("/yarn").root.text
    changed = replace(sample_workshop(), name="Hollin Edge")
    save_workshop(settled.book, changed, now=BEGINNING)
    assert "Hollin Edge" in settled.open("/yarn").root.text


def test_a_lot_weighed_anew_shows_at_the_next_request(settled: BookMaker) -> None:
    lot = lots_on_shelf(settled.book)[0]
    assert f"{lot.grams:g} g" in settled.open("/yarn").root.text.replace("\u00a0", " ")
    weigh_lot(settled.book, lot.id, 37)
    assert "37 g" in settled.open("/yarn").root.text.replace("\u00a0", " ")
    assert len(workshop_versions(settled.book)) == 1


def test_a_workshop_that_did_not_change_is_read_and_prepared_once(settled: BookMaker) -> None:
    settled.open("/yarn")
    with patch("quoting.store.workshops.workshop_of", side_effect=AssertionError):
        settled.open("/yarn")
    assert settled.status == 200


def test_a_page_of_a_book_names_no_file(settled: BookMaker) -> None:
    for address in ("/measurements", "/yarn", "/workshop"):
        assert "start the program again" not in settled.open(address).root.text


def test_a_book_that_fails_is_told_in_words(settled: BookMaker, tmp_path: Path) -> None:
    settled.book.close()
    (tmp_path / "book.db").write_bytes(b"not a book any more, but letters " * 400)
    page = settled.open("/yarn")
    assert settled.status == 422
    assert "This is no book of this program" in page.root.text


def test_the_book_is_copied_once_a_day(settled: BookMaker, tmp_path: Path) -> None:
    settled.open("/yarn")
    copies = list((tmp_path / "book copies").iterdir())
    assert [copy.name for copy in copies] == ["2026-11-25.db"]
    copies[0].unlink()
    settled.open("/yarn")
    assert list((tmp_path / "book copies").iterdir()) == []
