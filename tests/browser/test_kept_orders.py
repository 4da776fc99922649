"""An order of a book in a real browser: it saves itself, and nothing is lost between two tabs."""

from __future__ import annotations

from playwright.sync_api import Page, expect

LOOKS = 10
"""How often an order is looked at until what was typed has come there."""


def test_what_is_typed_is_saved_by_itself_and_said_to_be(order: Page) -> None:
    with order.expect_response("**/save"):
        order.get_by_label("Title").fill("Typed by hand")
    expect(order.locator("#kept-state")).to_contain_text("Saved at")
    order.reload()
    expect(order.get_by_label("Title")).to_have_value("Typed by hand")


def test_a_page_that_is_left_at_once_saves_the_last_key(order: Page) -> None:
    """Its save is under way while the next page comes: the order is looked at until it is there."""
    address = order.url
    order.get_by_label("Title").fill("Left in a hurry")
    order.get_by_role("link", name="Yarn").click()
    expect(order.get_by_role("heading", level=1)).to_have_text("Yarn")
    assert "Left in a hurry" in (title_at(order, address) for _ in range(LOOKS))


def title_at(page: Page, address: str) -> str:
    """Return the title of an order as it is at an address now."""
    page.goto(address)
    return page.get_by_label("Title").input_value()


def test_a_late_save_from_another_tab_is_told_and_offered(order: Page) -> None:
    other = order.context.new_page()
    other.goto(order.url)
    with other.expect_response("**/save"):
        other.get_by_label("Title").fill("From the sofa")
    with order.expect_response("**/save"):
        order.get_by_label("Title").fill("From the desk")
    expect(order.locator("#kept-state")).to_contain_text("changed on another page")
    order.get_by_role("link", name="Show the order as it is now").click()
    expect(order.get_by_label("Title")).to_have_value("From the sofa")
    order.get_by_role("button", name="Make it an order of its own").click()
    expect(order.get_by_label("Title")).to_have_value("From the desk")
