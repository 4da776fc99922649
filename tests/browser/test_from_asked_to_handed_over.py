"""A whole order in a real browser: asked, quoted, agreed, made on a phone, handed over."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.test_seeing_and_reaching import violations

PHONE = {"width": 390, "height": 844}


@pytest.fixture
def agreed(order: Page) -> Page:
    """Give the quote of the demo's order, have it accepted, and open its making on a phone."""
    home = order.url
    order.get_by_role("button", name="Give this quote").click()
    expect(order.get_by_role("heading", level=1)).to_have_text(re.compile(r"Quote \d{4}-\d{3}"))
    order.get_by_role("button", name="Accepted").click()
    order.set_viewport_size(PHONE)
    order.goto(home)
    order.get_by_role("link", name="While it is made").click()
    expect(order.locator("figcaption")).to_contain_text("0 of 104 rows")
    return order


def test_a_new_order_is_given_as_soon_as_it_is_typed(order: Page) -> None:
    order.goto(order.url.partition("/orders")[0] + "/orders")
    order.get_by_role("button", name="New order").click()
    order.get_by_role("textbox", name="Width").fill("70 cm")
    order.get_by_role("textbox", name="Length").fill("90 cm")
    expect(order.locator("#answer svg").first).to_be_visible()
    order.get_by_role("textbox", name="Title").fill("Pram rug")
    order.get_by_role("button", name="Give this quote").click()
    expect(order.get_by_role("heading", level=1)).to_have_text(re.compile(r"Quote \d{4}-\d{3}"))


def write_down(page: Page, rows: int, minutes: str = "") -> None:
    """Say how far she is, as one does with a hook in the other hand."""
    page.get_by_label("Rows done").fill(str(rows))
    if minutes:
        page.get_by_label("Minutes").fill(minutes)
    page.locator("button.main", has_text="Write down").click()
    expect(page.locator("figcaption")).to_contain_text(f"{rows} of 104 rows")


def test_an_order_goes_from_asked_to_handed_over(agreed: Page) -> None:
    page, making = agreed, agreed.url
    write_down(page, 20, "95")
    page.get_by_role("button", name="Put it on the hook").click()
    expect(page.get_by_text("On the hook, for Rosalind Quill.")).to_be_visible()

    page.get_by_role("button", name="Start the clock").click()
    page.goto(making)  # another day, another tab
    page.get_by_label("Rows done").fill("42")
    page.get_by_role("button", name="Stop the clock").click()
    expect(page.get_by_label("Rows done")).to_have_value("42")
    page.get_by_label("Minutes").fill("100")
    page.get_by_text("Yarn used up, ends woven in").click()
    page.get_by_label("Used up of oat", exact=True).fill("1")
    page.locator("button.main", has_text="Write down").click()
    expect(page.locator(".yarn-left")).to_contain_text("more than planned up to row 42")

    page.get_by_label("Amount").fill("148.50")
    page.get_by_role("button", name="Write the payment down").click()
    expect(page.locator("#log + form + table")).to_contain_text("£148.50 received")

    write_down(page, 104, "290")
    expect(page.locator("figcaption")).to_contain_text("All rows are done.")
    page.get_by_role("link", name="The order").click()
    page.get_by_role("button", name="Now finished").click()
    page.get_by_role("link", name="What it took").click()
    expect(page.get_by_text("An hour of it earned £")).to_be_visible()
    page.get_by_role("button", name="Take in what is ticked").click()
    expect(page.get_by_role("status")).to_contain_text("Your workshop is at version 2")
    page.get_by_role("link", name="The order").click()
    page.get_by_role("button", name="Now handed over").click()
    expect(page.get_by_text("Stage: handed over")).to_be_visible()


def check_for_everybody(page: Page) -> None:
    """See that a page is whole on a small phone and a desk, and that axe finds nothing wrong."""
    for summary in page.locator("summary:visible").all():
        summary.click()
    for width in (320, 1280):
        page.set_viewport_size({"width": width, "height": 800})
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert violations(page) == []


def test_its_pages_can_be_used_by_everybody(agreed: Page) -> None:
    page, making = agreed, agreed.url
    write_down(page, 104, "500")
    check_for_everybody(page)
    page.get_by_role("link", name="Correct: At the hook").click()
    check_for_everybody(page)
    page.goto(making.removesuffix("/making"))
    for stage in ("on the hook", "finished"):
        page.get_by_role("button", name=f"Now {stage}").click()
    page.get_by_role("link", name="What it took").click()
    expect(page.get_by_role("button", name="Take in what is ticked")).to_be_visible()
    check_for_everybody(page)


def test_all_of_it_is_done_by_the_keyboard_alone(agreed: Page) -> None:
    agreed.get_by_label("Rows done").press("Control+a")
    agreed.keyboard.type("12")
    agreed.keyboard.press("Tab")
    agreed.keyboard.type("50")
    agreed.keyboard.press("Enter")
    expect(agreed.locator("figcaption")).to_contain_text("12 of 104 rows")
    expect(agreed.locator(".log")).to_contain_text("50 min")
