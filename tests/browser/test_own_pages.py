"""The pages of a maker's own workshop in a real browser: seen, reached by keyboard, timed."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.serving import serving


@contextmanager
def served(folder: Path, *options: str) -> Iterator[str]:
    """Serve a book; yield its address."""
    command = ("serve", "--no-browser", *options, "--port", "0")
    with serving("quoting", *command, folder=folder) as address:
        yield address.rstrip("/")


@pytest.fixture
def book(tmp_path: Path) -> Iterator[str]:
    """Serve the demo's book."""
    with served(tmp_path, "--demo") as address:
        yield address


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[str]:
    """Serve a book with nothing in it."""
    with served(tmp_path, "--book", str(tmp_path / "book.db")) as address:
        yield address


def faults(page: Page) -> list[str]:
    """Return what axe finds wrong, one line for each rule."""
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {one['nodes'][0]['html'][:120]}" for one in found]


def seen_well(page: Page, address: str) -> None:
    """See a page at large, dark, and on the smallest phone."""
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
        page.goto(address)
        assert faults(page) == []
    page.set_viewport_size({"width": 320, "height": 700})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.set_viewport_size({"width": 1280, "height": 900})


@pytest.mark.parametrize("path", ["workshop", "measurements", "yarn", "workshop/versions"])
def test_a_page_of_the_workshop_is_seen_by_everybody(page: Page, book: str, path: str) -> None:
    seen_well(page, f"{book}/{path}")


def test_mistakes_and_removed_lines_are_seen_by_everybody(page: Page, book: str) -> None:
    page.goto(f"{book}/yarn")
    page.get_by_role("button", name="Remove colour 2 of moor aran").press("Enter")
    expect(page.get_by_role("button", name="Put back colour teal")).to_be_focused()
    page.get_by_label("Price").first.fill("lots")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("link", name="Yarn 1, way it is sold 1, Price")).to_be_visible()
    assert faults(page) == []


def test_a_colour_is_picked_or_its_code_typed(page: Page, book: str) -> None:
    page.goto(f"{book}/yarn")
    picker = page.get_by_label("Colour of colour 1 of moor aran", exact=True)
    code = page.get_by_label("Colour of colour 1 of moor aran: code")
    expect(code).to_have_value(picker.input_value())
    picker.fill("#204060")
    expect(code).to_have_value("#204060")
    code.fill("8FA3B0")
    expect(picker).to_have_value("#8fa3b0")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_text("Saved.")).to_be_visible()
    expect(code).to_have_value(re.compile("#8fa3b0", re.IGNORECASE))
    code.fill("mossy")
    page.get_by_role("button", name="Save").click()
    expect(picker).to_have_value("mossy")
    assert faults(page) == []


STEPS = (
    "3. A swatch",
    "4. A motif",
    "5. A timing",
    "6. Your pay",
    "7. The other work",
    "Begin",
)
"""What the buttons of the first steps after the yarn lead to."""


def test_first_steps_are_taken_by_enter_alone(page: Page, empty: str) -> None:
    seen_well(page, f"{empty}/first-steps")
    page.get_by_label("Name", exact=True).fill("Hollin Edge")
    page.get_by_label("Name", exact=True).press("Enter")
    expect(page.get_by_role("heading", level=2).first).to_have_text("A yarn, as on its label")
    page.get_by_label("Name", exact=True).fill("fell aran")
    page.get_by_label("Name", exact=True).press("Enter")
    expect(page.get_by_role("heading", name="things to correct")).to_be_visible()
    assert faults(page) == []
    for step in STEPS:
        page.get_by_role("button", name=step).click()
        assert faults(page) == []


def test_first_steps_go_on_after_their_tab_was_closed(page: Page, empty: str) -> None:
    page.goto(f"{empty}/first-steps")
    page.get_by_label("Name", exact=True).fill("Hollin Edge")
    page.get_by_label("Name", exact=True).press("Enter")
    expect(page.get_by_role("heading", level=2).first).to_have_text("A yarn, as on its label")
    later = page.context.new_page()
    page.close()
    seen_well(later, f"{empty}/first-steps")
    expect(later.get_by_role("heading", level=2).first).to_have_text("A yarn, as on its label")
    later.get_by_role("link", name="Begin anew").click()
    expect(later.get_by_label("Name", exact=True)).to_have_value("")


def test_the_clock_goes_on_while_its_page_is_closed(page: Page, book: str) -> None:
    """From before to after midnight, and over the hour that winter time takes back."""
    page.clock.install(time="2026-10-24T23:50:00+01:00")
    page.goto(f"{book}/measurements")
    page.get_by_role("button", name="Start").click()
    page.goto(f"{book}/yarn")
    page.clock.fast_forward("03:00:00")
    page.goto(f"{book}/measurements")
    expect(page.get_by_role("button", name="Start")).to_be_disabled()
    page.clock.fast_forward("00:30")
    page.get_by_role("button", name="Stop").click()
    minutes = page.get_by_label("Minutes in all")
    assert 180.5 <= float(minutes.input_value()) < 181
    page.get_by_label("Stitches worked").fill("2400")
    page.get_by_role("button", name="Take it as a timing").click()
    expect(page.get_by_label("Minutes", exact=True).last).to_have_value(re.compile(r"^180\.5"))
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_text("Saved.")).to_be_visible()
