"""From the worktable to the Sizes page and back, in a real browser."""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from openpyxl import load_workbook
from playwright.sync_api import Browser, Page, expect

AXE = Axe()
SIX = ("Cot", "Lovey", "Pram or car seat", "Crib (US)", "Lap", "Throw")
PRICES = ("240", "60", "200", "240", "290", "470")


def violations(page: Page) -> list[str]:
    """Return what axe finds wrong, one line for each rule."""
    found = AXE.run(page).response["violations"]
    return [f"{rule['id']}: {rule['nodes'][0]['html'][:200]}" for rule in found]


def price_beside(size: str) -> str:
    """Return the accessible name of a size's price field."""
    return f"Price of {size}, GBP"


def rows(page: Page) -> list[list[str]]:
    """Return the rows of the table of sizes."""
    table = page.get_by_role("region", name="Sizes side by side").locator("tbody tr")
    return [row.locator("th, td").all_inner_texts() for row in table.all()]


def test_six_sizes_are_compared_from_the_worktable_at_prices_that_are_typed(
    page: Page, address: str, tmp_path: Path
) -> None:
    page.goto(address)
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Moorland in six sizes")
    page.get_by_role("button", name="Compare sizes").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sizes")
    expect(page.locator(".asked")).to_contain_text("Moorland in six sizes")
    expect(page.locator("#answer")).to_contain_text("At your target every size pays about the same")
    assert [row[0] for row in rows(page)] == [f"{SIX[0]} as ordered", *SIX[1:]]
    assert page.get_by_label(price_beside("Cot")).is_hidden()
    page.get_by_label("At these prices, what does each pay me?").check()
    for size, price in zip(SIX, PRICES, strict=True):
        page.get_by_label(price_beside(size)).fill(price)
    expect(page.locator("#answer tbody tr").nth(5)).to_contain_text("470.00")
    expect(page.locator("#answer .verdict")).to_have_text(re.compile("pays best, £"))
    expect(page.locator("#status")).to_have_text(re.compile("pays best, £"))
    expect(page.get_by_label(price_beside("Throw"))).to_be_focused()
    assert violations(page) == []
    with page.expect_download() as saving:
        page.get_by_role("button", name="Save the comparison as a spreadsheet").click()
    saving.value.save_as(tmp_path / "sizes.xlsx")
    assert Decimal(470) in figures_in(tmp_path / "sizes.xlsx")


def figures_in(path: Path) -> set[Decimal]:
    """Return every figure in a saved spreadsheet."""
    book = load_workbook(path, data_only=True)
    cells = [cell.value for sheet in book for row in sheet.iter_rows() for cell in row]
    return {Decimal(str(value)) for value in cells if isinstance(value, int | float)}


def test_the_top_bar_takes_the_worktables_order_and_what_was_typed_before(
    page: Page, address: str
) -> None:
    page.goto(address)
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Blanket for a reader")
    page.get_by_role("link", name="Sizes").click()
    expect(page.locator(".asked")).to_contain_text("Blanket for a reader")
    with page.expect_response("**/sizes/answer"):
        page.get_by_label("Own size 1", exact=True).fill("90x90")
    expect(page.locator("#answer")).to_contain_text("90 × 90")
    page.get_by_role("link", name="Orders").click()
    expect(page.get_by_label("Title")).to_have_value("Blanket for a reader")
    page.get_by_role("link", name="Sizes").click()
    expect(page.get_by_label("Own size 1", exact=True)).to_have_value("90x90")
    expect(page.locator(".asked")).to_contain_text("Blanket for a reader")


def test_back_to_the_order_leads_to_what_was_typed_last_mistakes_and_all(
    page: Page, address: str
) -> None:
    page.goto(address)
    page.get_by_role("button", name="Compare sizes").click()
    page.get_by_role("link", name="Orders").click()
    page.get_by_label("Width").fill("31 1/2 inn")
    page.go_back()
    page.get_by_role("button", name="Back to the order").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Order")
    expect(page.get_by_label("Width")).to_have_value("31 1/2 inn")


def test_back_to_the_sizes_compares_the_order_as_it_is_now(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_role("button", name="Compare sizes").click()
    page.get_by_label("Own size 2", exact=True).fill("91x92")
    page.get_by_role("link", name="Orders").click()
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Changed meanwhile")
    page.go_back()
    expect(page.locator(".asked")).to_contain_text("Changed meanwhile")
    expect(page.get_by_label("Own size 2", exact=True)).to_have_value("91x92")


def test_a_size_is_taken_to_the_worktable(page: Page, address: str) -> None:
    page.goto(f"{address}sizes")
    page.get_by_role("button", name="Take Lap to the order").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Order")
    assert page.get_by_label("Width").input_value() == "91.44 cm"


def test_without_javascript_the_buttons_compare(browser: Browser, address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    page.get_by_role("button", name="Compare sizes").click()
    page.get_by_label("At these prices, what does each pay me?").check()
    page.get_by_label(price_beside("Cot")).fill("240")
    page.get_by_label("Own size 1", exact=True).fill("90 by 90")
    page.get_by_role("button", name="Compare", exact=True).first.click()
    expect(page.locator("#mistakes")).to_contain_text("“90 by 90” cannot be read as a size")
    page.get_by_role("button", name="Add a size").click()
    assert page.get_by_label("Own size 1", exact=True).input_value() == "90 by 90"
    page.get_by_label("Own size 1", exact=True).fill("90 x 90")
    page.get_by_label("Price of own size 1, GBP").fill("250")
    page.get_by_role("button", name="Compare", exact=True).first.click()
    assert {row[0].split(" pays")[0].split(" as")[0] for row in rows(page)} == {
        "Cot",
        "90 × 90\u00a0cm",
    }
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_wrong_with_a_budget_or_beside_mistakes(
    browser: Browser, address: str, scheme: str
) -> None:
    context = browser.new_context(color_scheme=scheme)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(f"{address}sizes")
    page.get_by_label("The buyer can spend, in all").fill("250")
    expect(page.locator("#answer")).to_contain_text("With £250.00 to spend")
    assert violations(page) == []
    page.get_by_label("Own size 1", exact=True).fill("wide")
    expect(page.locator("#mistakes")).to_contain_text("cannot be read as a size")
    page.get_by_text("Where these sizes come from").click()
    assert violations(page) == []
    context.close()


@pytest.mark.parametrize("width", [320, 390])
def test_a_narrow_screen_never_scrolls_sideways(browser: Browser, address: str, width: int) -> None:
    context = browser.new_context(viewport={"width": width, "height": 640})
    page = context.new_page()
    page.goto(f"{address}sizes")
    page.get_by_label("At these prices, what does each pay me?").check()
    page.get_by_label(price_beside("Cot")).fill("240")
    page.get_by_label("The buyer can spend, in all").fill("250")
    expect(page.locator("#answer")).to_contain_text("With £250.00 to spend")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert violations(page) == []
    context.close()


def test_fewer_ends_are_taken_over_with_one_button(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Remove Section 1, stripe 3").click()
    page.get_by_role("button", name="Fewer ends…").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Fewer ends")
    assert violations(page) == []
    page.set_viewport_size({"width": 320, "height": 640})
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.get_by_role("button", name="Take striping 1").click()
    ends = page.locator("#figures dl > div").filter(has_text="Ends to weave").locator("dd")
    expect(ends).to_have_text("16")


def test_the_hour_is_worked_out_on_the_workshop_page(page: Page, address: str) -> None:
    page.goto(f"{address}workshop")
    page.get_by_label("Income you want from making, a year").fill("24000")
    page.get_by_label("Overhead, a year").fill("1900")
    page.get_by_label("Weeks a year").fill("46")
    page.get_by_label("Hours a week really worked on orders").fill("25")
    page.get_by_role("button", name="Work out an hour").click()
    expect(page.locator("pre")).to_contain_text('making_per_hour = "20.87"')
    assert violations(page) == []
