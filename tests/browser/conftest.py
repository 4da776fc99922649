"""The pages served as a maker serves them, in a real browser."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, expect, sync_playwright

from tests.browser.patience import patient_deeds
from tests.browser.serving import BROWSERS, CALM, serving
from tests.programs import require_program

PATIENCE_MS = 10_000
expect.set_options(timeout=PATIENCE_MS)


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the demo's worktable without a book."""
    folder = tmp_path_factory.mktemp("maker")
    with serving("tests.browser.demo_worktable", "0", folder=folder) as address:
        yield address


@pytest.fixture(scope="session")
def book_to_look_at(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the demo's book on its day, for tests that change nothing in it."""
    folder = tmp_path_factory.mktemp("looked at")
    with serving("tests.browser.demo_on_a_day", "--port", "0", folder=folder) as address:
        yield address


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Start the browser."""
    chromium = require_program(*BROWSERS)
    with patient_deeds(), sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=list(CALM))
        yield browser
        browser.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """Open a page on which nothing may go wrong unseen."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, locale="en-GB")
    context.set_default_timeout(PATIENCE_MS)
    page = context.new_page()
    wrong: list[str] = []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.on("console", lambda said: wrong.append(said.text) if _is_fault(said) else None)
    yield page
    context.close()
    assert wrong == []


def _is_fault(said: ConsoleMessage) -> bool:
    """Return whether the browser complains of the page, and not only of an answer's status."""
    return said.type == "error" and not said.text.startswith("Failed to load resource")


@pytest.fixture
def order(page: Page, tmp_path: Path) -> Iterator[Page]:
    """Open the first order of the demo's book."""
    options = ("serve", "--no-browser", "--demo", "--port", "0")
    with serving("quoting", *options, folder=tmp_path) as address:
        page.goto(address)
        page.get_by_role("link", name="Cot blanket in moorland stripes").click()
        yield page
