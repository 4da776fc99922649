"""Stripes that are fit to the length, on the worktable."""

from tests.web.conftest import Maker
from tests.web.pages import Page

SECTION = "blanket.sections.1"


def fitted(maker: Maker, **more: str) -> Page:
    """Send the demo's order with its stripes in proportion 1 : 2 : 1."""
    fields = maker.open().typed() | {f"{SECTION}.stripes.2.rows": "2", f"{SECTION}.fitted": "yes"}
    named = {f"{SECTION}.{name}": text for name, text in more.items()}
    return Page(maker.client.post("/", data=fields | named).text)


def test_a_ticked_section_works_its_stripes_once_and_says_what_they_came_to(maker: Maker) -> None:
    """By hand: of 103 rows 25.75, 77.25 and 103 are ends, so 26, 51 and 26."""
    assert (
        "Section 1: 103 rows, 26 teal, 51 rust and 26 oat" in fitted(maker).with_id("answer").text
    )


def test_repeats_beside_the_tick_are_told_at_both_and_kept(maker: Maker) -> None:
    page = fitted(maker, repeats="3")
    assert "give no repeats beside it" in page.said_of(f"{SECTION}.repeats")
    assert "give no repeats beside it" in page.said_of(f"{SECTION}.fitted")
    assert page.typed()[f"{SECTION}.repeats"] == "3"
