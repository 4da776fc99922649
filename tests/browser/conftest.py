"""The pages served as a maker serves them, in a real browser."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, sync_playwright

from tests.programs import require_program

CALM = ("--no-sandbox", "--disable-gpu", "--disable-background-networking")
PATIENCE_MS = 10_000
ROOT = Path(__file__).parents[2]


def serve(port: str = "0", *, folder: Path) -> tuple[subprocess.Popen[str], str]:
    """Start the demo's worktable without a book; return the process and the address it names."""
    command = [sys.executable, "-m", "tests.browser.demo_worktable", port]
    process = subprocess.Popen(
        command, stderr=subprocess.PIPE, text=True, cwd=folder, env={"PYTHONPATH": str(ROOT)}
    )
    assert process.stderr is not None
    return process, process.stderr.readline().split()[1]


def stop(process: subprocess.Popen[str]) -> None:
    """End the pages and let go of their messages."""
    process.terminate()
    process.communicate()


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """Serve the demo's worktable."""
    process, address = serve(folder=tmp_path_factory.mktemp("maker"))
    yield address
    stop(process)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Start the browser."""
    chromium = require_program("chromium", "chromium-browser", "google-chrome")
    with sync_playwright() as playwright:
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
    command = [sys.executable, "-m", "quoting", "serve", "--no-browser", "--demo", "--port", "0"]
    process = subprocess.Popen(
        command, stderr=subprocess.PIPE, text=True, cwd=tmp_path, env={"PYTHONPATH": str(ROOT)}
    )
    assert process.stderr is not None
    page.goto(process.stderr.readline().split()[1])
    page.get_by_role("link", name="Cot blanket in moorland stripes").click()
    yield page
    stop(process)
