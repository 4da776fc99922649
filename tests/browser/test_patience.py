"""Tests of the browser read whole pages, however slow the machine is."""

from __future__ import annotations

import time

from playwright.sync_api import Page, Route

SLOWLY_S = 0.3


def slowly(route: Route) -> None:
    """Let a style sheet come late."""
    time.sleep(SLOWLY_S)
    route.continue_()


def test_a_click_waits_until_the_next_page_is_there_whole(page: Page, address: str) -> None:
    page.goto(address)
    page.context.route("**/*.css*", slowly)
    page.get_by_role("button", name="Compare sizes").click()
    assert page.evaluate("document.readyState") == "complete"


def test_a_key_waits_until_the_next_page_is_there_whole(page: Page, address: str) -> None:
    page.goto(address)
    page.context.route("**/*.css*", slowly)
    page.get_by_role("link", name="Sizes").press("Enter")
    assert page.url.endswith("/sizes")
    assert page.evaluate("document.readyState") == "complete"
