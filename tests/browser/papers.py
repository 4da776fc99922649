"""Every page on which a paper is made, shown or sent, opened in a browser one after another."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

ON_THE_HOOK = "orders/5"
"""The order of the demo's book that is being made."""

IN_THE_BOOK = {
    "given quote": "quotes/2026-005",
    "quote as given": "quotes/2026-005/page",
    "message": "quotes/2026-005/message",
    "guide": f"{ON_THE_HOOK}/guide",
    "row": f"{ON_THE_HOOK}/guide/row",
    "shopping for all": "orders/shopping",
    "shopping for one": f"{ON_THE_HOOK}/shopping",
    "papers of an order": f"{ON_THE_HOOK}/papers",
}
"""Where they are in the demo's book."""

PHONE = {"width": 320, "height": 640}
ENLARGED = {"width": 320, "height": 256}
"""1280 by 1024 pixels at 400 % (WCAG 2.2, 1.4.10)."""

SIDEWAYS = "document.documentElement.scrollWidth - innerWidth"

_AXE = Axe()
_PATIENCE_MS = 10_000


def violations(page: Page) -> list[str]:
    """Return what axe finds wrong, one line for each rule."""
    found = _AXE.run(page).response["violations"]
    return [f"{rule['id']}: {rule['nodes'][0]['html'][:200]}" for rule in found]


@contextmanager
def window(browser: Browser, **options: Any) -> Iterator[Page]:
    """Open a page in a window of its own, with the browser's options for it."""
    context = browser.new_context(locale="en-GB", **options)
    context.set_default_timeout(_PATIENCE_MS)
    yield context.new_page()
    context.close()


def paper_pages(page: Page, book: str, worktable: str) -> Iterator[tuple[str, Page]]:
    """Yield every page by its name, each to be looked at before the next is opened."""
    for name, path in IN_THE_BOOK.items():
        page.goto(book + path)
        yield name, page
    page.goto(worktable)
    yield from _opened("quote of the worktable", page, "Quote for the buyer")
    yield from card_pages(page, worktable)


def card_pages(page: Page, worktable: str) -> Iterator[tuple[str, Page]]:
    """Yield the card of two sizes between the maker's buttons, and then alone."""
    page.goto(f"{worktable}sizes")
    for size in ("Cot", "Lap"):
        page.get_by_label(f"{size} on a card").check()
    page.get_by_role("button", name="Card of choices").click()
    page.get_by_role("heading", level=1, name="Card of choices").wait_for()
    yield "card", page
    yield from _opened("card alone", page, "The card alone, to print")


def _opened(name: str, page: Page, button: str) -> Iterator[tuple[str, Page]]:
    paper = open_by(page, button)
    yield name, paper
    paper.close()


def open_by(page: Page, button: str) -> Page:
    """Press a button that opens a window; return what it opened."""
    with page.expect_popup() as opened:
        page.get_by_role("button", name=button, exact=True).click()
    opened.value.wait_for_load_state()
    return opened.value
