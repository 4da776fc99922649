"""What is typed in a tab comes back: after a reload, after Back, through slow answers."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect

from quoting.places import demo_order
from tests.browser.serving import start_worktable, stop

DEMO_TITLE = "Cot blanket in moorland stripes"


def title(page: Page, text: str) -> None:
    """Type a title, and wait for no answer: only for the page, as no hand is quicker than that."""
    page.wait_for_load_state()
    page.get_by_label("Title").fill(text)


def has_title(page: Page, text: str) -> None:
    """Wait until the form has a title."""
    expect(page.get_by_label("Title")).to_have_value(text)


def read_file(page: Page) -> None:
    """Read the demo's order file."""
    page.get_by_text("Another order: blank, or from a file").click()
    page.get_by_label("An order file").set_input_files(demo_order())
    page.get_by_role("button", name="Read it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Order")


def take_striping(page: Page) -> None:
    """Take over stripes with fewer ends."""
    page.get_by_label("Remove Section 1, stripe 3").click()
    page.get_by_role("button", name="Fewer ends…").click()
    page.get_by_role("button", name="Take striping 1").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Order")


def blank(page: Page) -> None:
    """Open a blank order."""
    page.get_by_text("Another order: blank, or from a file").click()
    page.get_by_role("link", name="A blank order").click()
    has_title(page, "Blanket")


@pytest.mark.parametrize("opens", [blank, read_file, take_striping], ids=lambda f: f.__name__)
def test_on_every_worktable_page_what_was_typed_outlives_a_reload_and_back(
    page: Page, address: str, opens: object
) -> None:
    assert callable(opens)
    page.goto(address)
    title(page, "The order before")
    opens(page)
    title(page, "The order after")
    page.reload()
    has_title(page, "The order after")
    page.get_by_role("link", name="Measurements").click()
    page.go_back()
    has_title(page, "The order after")
    page.get_by_role("link", name="Orders").click()
    has_title(page, "The order after")


@pytest.mark.parametrize("opens", [blank, read_file], ids=lambda f: f.__name__)
def test_another_order_leaves_the_one_before_for_back(
    page: Page, address: str, opens: object
) -> None:
    assert callable(opens)
    page.goto(address)
    title(page, "The order before")
    opens(page)
    title(page, "The order after")
    page.go_back()
    has_title(page, "The order before")
    page.go_forward()
    has_title(page, "The order after")


def test_the_demos_order_is_opened_afresh_and_the_one_before_stays_for_back(
    page: Page, address: str
) -> None:
    page.goto(address)
    title(page, "The order before")
    page.get_by_text("Another order: blank, or from a file").click()
    page.get_by_role("link", name="the demo’s order").click()
    has_title(page, DEMO_TITLE)
    page.go_back()
    has_title(page, "The order before")


def test_back_over_pages_that_a_form_made_shows_them_again(page: Page, address: str) -> None:
    page.goto(address)
    take_striping(page)
    page.get_by_role("button", name="Compare sizes").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sizes")
    for heading in ("Order", "Fewer ends", "Order"):
        page.go_back()
        expect(page.get_by_role("heading", level=1)).to_have_text(heading)


def test_a_link_within_the_page_loses_nothing(page: Page, address: str) -> None:
    page.goto(f"{address}blank")
    title(page, "Typed before the link")
    page.locator(".to-answer a").dispatch_event("click")
    page.reload()
    has_title(page, "Typed before the link")


def test_sizes_typed_outlive_a_reload_and_back_with_their_order(page: Page, address: str) -> None:
    page.goto(address)
    title(page, "In many sizes")
    page.get_by_role("button", name="Compare sizes").click()
    page.get_by_label("Own size 1", exact=True).fill("91x92")
    page.reload()
    expect(page.get_by_label("Own size 1", exact=True)).to_have_value("91x92")
    expect(page.locator(".asked")).to_contain_text("In many sizes")
    page.get_by_role("link", name="Measurements").click()
    page.go_back()
    expect(page.get_by_label("Own size 1", exact=True)).to_have_value("91x92")


def test_the_last_keys_before_leaving_are_kept(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Title").evaluate(
        """field => {
            field.value = "In the last moment";
            field.dispatchEvent(new Event("input", { bubbles: true }));
            location.href = "/measurements";
        }"""
    )
    page.wait_for_url("**/measurements")
    page.get_by_role("link", name="Orders").click()
    has_title(page, "In the last moment")


def test_typing_while_the_kept_order_comes_back_loses_neither(page: Page, address: str) -> None:
    page.goto(address)
    title(page, "Kept before")
    page.get_by_role("link", name="Measurements").click()
    held: list[Route] = []
    page.route(address, lambda route: held.append(route) if posts(route) else route.continue_())
    page.get_by_role("link", name="Orders").click()
    page.get_by_label("Buyer", exact=True).fill("A")
    page.get_by_label("Buyer", exact=True).press_sequentially("nn", delay=400)
    page.wait_for_timeout(600)
    held[-1].continue_()
    has_title(page, "Kept before")
    expect(page.get_by_label("Buyer", exact=True)).to_have_value("Ann")
    expect(page.get_by_label("Buyer", exact=True)).to_be_focused()
    page.unroute(address)
    page.reload()
    has_title(page, "Kept before")
    expect(page.get_by_label("Buyer", exact=True)).to_have_value("Ann")


def posts(route: Route) -> bool:
    """Return whether a request sends a form."""
    return route.request.method == "POST"


def test_leaving_before_the_kept_order_is_back_keeps_it(page: Page, address: str) -> None:
    page.goto(address)
    title(page, "Kept before")
    page.get_by_role("link", name="Measurements").click()
    page.route(address, lambda route: route.abort() if posts(route) else route.continue_())
    page.get_by_role("link", name="Orders").click()
    expect(page.locator("#answer .old-words")).to_contain_text("No answer came")
    page.get_by_role("link", name="Measurements").click()
    page.unroute(address)
    page.get_by_role("link", name="Orders").click()
    has_title(page, "Kept before")


def test_typing_sizes_while_the_worktables_order_comes_never_compares_another(
    page: Page, address: str
) -> None:
    page.goto(address)
    title(page, "The order of the worktable")
    held: list[Route] = []
    page.route("**/of-order", lambda route: held.append(route))  # noqa: PLW0108
    with page.expect_request("**/of-order"):
        page.get_by_role("link", name="Sizes").click()
    page.get_by_label("Own size 1", exact=True).fill("91x92")
    page.wait_for_timeout(600)
    held[-1].continue_()
    expect(page.locator(".asked")).to_contain_text("The order of the worktable")
    expect(page.get_by_label("Own size 1", exact=True)).to_have_value("91x92")
    expect(page.locator("#answer")).to_contain_text("91 × 92")


def test_an_order_to_be_put_right_is_never_replaced_by_the_demos(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Width").fill("wide")
    page.get_by_role("link", name="Sizes").click()
    expect(page.locator("#answer .old-words")).to_contain_text("something to put right first")
    page.get_by_label("Own size 1", exact=True).fill("91x92")
    page.wait_for_timeout(600)
    expect(page.locator("#answer .old-words")).to_contain_text("something to put right first")
    expect(page.locator("#answer")).not_to_contain_text("91 × 92")


def test_a_file_read_after_a_restart_is_asked_for_again_and_the_order_stays(
    page: Page, tmp_path: Path
) -> None:
    process, address = start_worktable(folder=tmp_path)
    page.goto(address)
    title(page, "Typed for an hour")
    stop(process)
    port = address.rstrip("/").rpartition(":")[2]
    process, _ = start_worktable(port, folder=tmp_path)
    page.get_by_text("Another order: blank, or from a file").click()
    page.get_by_label("An order file").set_input_files(demo_order())
    page.get_by_role("button", name="Read it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Choose the file once more, please")
    page.get_by_label("An order file").set_input_files(demo_order())
    page.get_by_role("button", name="Read it").click()
    has_title(page, DEMO_TITLE)
    page.go_back()
    page.wait_for_load_state("networkidle")
    page.go_back()
    has_title(page, "Typed for an hour")
    stop(process)


def test_a_side_typed_right_after_a_size_is_picked_leaves_the_other_as_picked(
    page: Page, address: str
) -> None:
    page.goto(f"{address}blank")
    page.get_by_label("A customary size").select_option("Throw")
    page.get_by_label("Width").fill("120 cm")
    expect(page.locator("#answer")).to_contain_text("120 × 160 cm was asked")
    expect(page.get_by_label("A customary size")).to_have_value("")
