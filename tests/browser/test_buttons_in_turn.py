"""Buttons pressed faster than the answers come: each does its work in its turn, on its own line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest
from playwright.sync_api import Page, Route, expect

from tests.browser.test_making_a_quote import until_answered

STRIPES = ["teal", "rust", "oat"]
"""The colours of the demo's section, from the bottom up."""

PRESSED: dict[str, tuple[Sequence[str], Sequence[str]]] = {
    "a stripe moved twice goes two places": (
        ["Move Section 1, stripe 1 up"] * 2,
        ["rust", "oat", "teal"],
    ),
    "a stripe moved down ahead of its removal is the one removed": (
        ["Move Section 1, stripe 3 down", "Remove Section 1, stripe 3"],
        ["teal", "rust"],
    ),
    "the last stripe stays last, and is the one removed": (
        ["Move Section 1, stripe 3 up", "Remove Section 1, stripe 3"],
        ["teal", "rust"],
    ),
    "two stripes are removed": (
        ["Remove Section 1, stripe 1", "Remove Section 1, stripe 2"],
        ["oat"],
    ),
    "a stripe removed twice is removed once": (
        ["Remove Section 1, stripe 2"] * 2,
        ["teal", "oat"],
    ),
    "a stripe behind a copy is the one removed": (
        ["Copy Section 1, stripe 1", "Remove Section 1, stripe 2"],
        ["teal", "teal", "oat"],
    ),
    "first rows leave a section alone": (
        ["Remove First rows, stripe 1", "Remove Section 1, stripe 1"],
        ["rust", "oat"],
    ),
}


@pytest.fixture
def held(page: Page, address: str) -> Iterator[list[Route]]:
    """Open the demo's order with every answer to a button held back until it is let go."""
    page.goto(address)
    until_answered(page)
    routes: list[Route] = []
    page.route(address, lambda route: routes.append(route))  # noqa: PLW0108
    yield routes
    page.unroute_all(behavior="ignoreErrors")


def let_go(page: Page, held: list[Route], at_most: int) -> None:
    """Let one answer after another come; a button that has nothing left to do asks for none."""
    for _ in range(at_most):
        for _ in range(20):
            page.wait_for_timeout(100)
            if held:
                held.pop(0).continue_()
                break


def has_stripes(page: Page, colours: Sequence[str]) -> None:
    """Wait until the first section has stripes of these colours, from the bottom up."""
    fields = page.get_by_label("Section 1, stripes").locator("select[name$=colour]")
    expect(fields).to_have_count(len(colours))
    for field, colour in zip(fields.all(), reversed(colours), strict=True):
        expect(field).to_have_value(colour)


@pytest.mark.parametrize("name", PRESSED)
def test_each_button_acts_on_the_line_that_it_was_beside(
    page: Page, held: list[Route], name: str
) -> None:
    buttons, wanted = PRESSED[name]
    has_stripes(page, STRIPES)
    for button in buttons:
        page.get_by_role("button", name=button).click()
    let_go(page, held, at_most=len(buttons))
    has_stripes(page, wanted)


def test_a_quote_asked_for_while_a_stripe_is_removed_is_of_what_is_left(
    page: Page, held: list[Route]
) -> None:
    page.get_by_role("button", name="Remove Section 1, stripe 1").click()
    page.get_by_role("button", name="Quote for the buyer").click()
    with page.context.expect_page() as opening:
        let_go(page, held, at_most=1)
    expect(opening.value.locator(".colours")).to_contain_text("rust")
    expect(opening.value.locator(".colours")).not_to_contain_text("teal")
    has_stripes(page, ["rust", "oat"])


def test_the_line_waited_for_has_the_focus_in_the_end(page: Page, held: list[Route]) -> None:
    page.get_by_role("button", name="Move Section 1, stripe 1 up").focus()
    page.keyboard.press("Enter")
    page.keyboard.press("Enter")
    let_go(page, held, at_most=2)
    expect(page.get_by_role("button", name="Move Section 1, stripe 3 up")).to_be_focused()
