"""A kept order changed as a maker does: every change is seen at once, saved, and there again."""

from __future__ import annotations

from playwright.sync_api import Page, expect

STRIPES = "blanket.sections.1.stripes"


def field(order: Page, name: str) -> str:
    """Return the value of a field, found by its name."""
    return order.locator(f'[name="{name}"]').input_value()


def price(order: Page) -> str:
    """Return the price among the figures."""
    return order.locator("#figures").inner_text().split("\n")[1]


def test_a_stripe_that_was_removed_is_put_back_and_saved_by_the_keyboard(order: Page) -> None:
    before = field(order, f"{STRIPES}.2.colour")
    order.get_by_role("button", name="Remove Section 1, stripe 2").focus()
    order.keyboard.press("Enter")
    put_back = order.get_by_role("button", name=f"Put back stripe {before}")
    expect(put_back).to_be_focused()
    assert field(order, f"{STRIPES}.2.colour") != before
    order.reload()
    expect(put_back).to_be_visible()
    put_back.focus()
    order.keyboard.press("Enter")
    expect(put_back).to_have_count(0)
    assert field(order, f"{STRIPES}.2.colour") == before


def test_stripes_typed_as_a_list_tell_a_mistake_by_its_line_and_are_kept(order: Page) -> None:
    order.get_by_role("button", name="Type or paste them as a list").last.click()
    text = order.get_by_role("textbox", name="First rows, stripes")
    with order.expect_response("**/save"):
        text.fill("oat, 2\nrose, 1")
    expect(order.locator('[id="blanket.first_rows.says"]')).to_contain_text("Line 2")
    with order.expect_response("**/save"):
        text.fill("oat, 2\nteal, 1")
    order.reload()
    expect(text).to_have_value("oat, 2\nteal, 1")
    order.get_by_role("button", name="Show them as fields").click()
    expect(order.locator('[name="blanket.first_rows.2.colour"]')).to_have_value("teal")


def test_a_price_counts_while_it_is_chosen(order: Page) -> None:
    own = price(order)
    with order.expect_response("**/save"):
        order.locator('[name="price_by"][value="given"]').check()
    with order.expect_response("**/save"):
        order.locator('[name="price.given"]').fill("310")
    expect(order.locator("#figures")).to_contain_text("310")
    order.reload()
    expect(order.locator("#figures")).to_contain_text("310")
    order.locator('[name="price_by"][value=""]').check()
    expect(order.locator("#figures")).to_contain_text(own)


def test_stripes_that_are_fit_to_the_length_are_said_to_be(order: Page) -> None:
    order.get_by_label("Each stripe once, fit to the length").check()
    said = "Section 1: 103 rows, 34 teal, 35 rust and 34 oat"
    expect(order.locator("#answer")).to_contain_text(said)
