"""Names of eighty letters without a space push no page sideways, on a phone or at a desk."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.browser.serving import serving

LONG = "W" * 80


@pytest.fixture
def book(tmp_path: Path) -> Iterator[str]:
    """Serve the demo's book."""
    command = ("serve", "--no-browser", "--demo", "--port", "0")
    with serving("quoting", *command, folder=tmp_path) as address:
        yield address.rstrip("/")


def agreed(page: Page, book: str) -> str:
    """Have an order of long names agreed, and return its address."""
    page.goto(f"{book}/orders")
    page.get_by_role("button", name="New order").click()
    address = page.url
    typed = {"blanket.width": "70 cm", "blanket.height": "90 cm"}
    for name, text in (typed | {"order.title": LONG, "order.buyer": LONG}).items():
        page.locator(f"[name='{name}']").fill(text)
    page.get_by_role("button", name="Give this quote").first.click()
    page.get_by_role("button", name="Accepted").click()
    page.wait_for_load_state()
    return address


def test_long_names_push_no_page_sideways(page: Page, book: str) -> None:
    order = agreed(page, book)
    for width in (320, 1024, 1160):
        page.set_viewport_size({"width": width, "height": 800})
        for path in (f"{book}/orders", f"{book}/orders/shopping", f"{order}/forget"):
            page.goto(path)
            assert page.get_by_text(LONG).first.is_visible()
            assert page.evaluate("document.documentElement.scrollWidth") <= width, path
