"""From an empty form to the file that is saved, as a maker goes."""

import re
from decimal import Decimal
from pathlib import Path

from openpyxl import load_workbook
from playwright.sync_api import Browser, Page, Route, expect

from tests.browser.serving import start_worktable, stop


def figure(page: Page, name: str) -> str:
    """Return one of the figures that are always in sight."""
    row = page.locator("#figures dl > div").filter(has_text=name)
    return row.locator("dd").inner_text().strip()


def until_answered(page: Page) -> None:
    """Wait for a price."""
    expect(page.locator("#figures dd").first).to_have_text(re.compile("£"))


def total_in(path: Path) -> set[Decimal]:
    """Return every amount in a saved spreadsheet."""
    book = load_workbook(path, data_only=True)
    cells = [cell.value for sheet in book for row in sheet.iter_rows() for cell in row]
    return {Decimal(str(value)) for value in cells if isinstance(value, int | float)}


def test_from_an_empty_form_to_the_saved_spreadsheet(
    page: Page, address: str, tmp_path: Path
) -> None:
    page.goto(f"{address}blank")
    page.get_by_label("A customary size").select_option("Lap")
    until_answered(page)
    assert page.get_by_label("Width").input_value() == "91.44 cm"
    page.get_by_role("button", name="Add a stripe").click()
    second = page.get_by_label("Colour of Section 1, stripe 2")
    expect(second).to_be_focused()
    second.select_option("rust")
    page.get_by_role("button", name="Add a border").click()
    expect(page.get_by_label("Rounds")).to_have_value("1")
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Lap blanket for a reader")
    price = figure(page, "Price")
    with page.expect_download() as saving:
        page.get_by_role("button", name="Save the costing spreadsheet").click()
    saving.value.save_as(tmp_path / "costing.xlsx")
    assert "lap-blanket-for-a-reader" in saving.value.suggested_filename
    assert Decimal(price.removeprefix("£")) in total_in(tmp_path / "costing.xlsx")
    with page.context.expect_page() as opening:
        page.get_by_role("button", name="Quote for the buyer").click()
    expect(opening.value.get_by_role("heading", level=1)).to_have_text("Lap blanket for a reader")
    expect(opening.value.locator("table")).to_contain_text(price)


def test_without_javascript_the_buttons_do_the_same(
    browser: Browser, address: str, tmp_path: Path
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{address}blank")
    page.get_by_label("A customary size").select_option("Cot")
    page.get_by_role("button", name="Take this size").click()
    page.get_by_role("button", name="Add a stripe").click()
    page.get_by_label("Rows of Section 1, stripe 2").fill("two")
    page.get_by_role("button", name="Work it out").first.click()
    expect(page.locator("#mistakes")).to_contain_text("“two” cannot be read as a number")
    assert page.get_by_label("Rows of Section 1, stripe 2").input_value() == "two"
    page.get_by_label("Rows of Section 1, stripe 2").fill("2")
    page.get_by_label("Rows of Section 1, stripe 2").press("Enter")
    until_answered(page)
    with page.expect_download() as saving:
        page.get_by_role("button", name="Save the order file").click()
    saving.value.save_as(tmp_path / "order.toml")
    assert '"80 cm"' in (tmp_path / "order.toml").read_text("utf-8")
    context.close()


def test_the_answer_follows_while_the_field_keeps_focus_and_caret(page: Page, address: str) -> None:
    page.goto(address)
    before = figure(page, "Price")
    width = page.get_by_label("Width")
    width.focus()
    width.press("Home")
    width.press_sequentially("1")
    expect(page.locator("#answer")).to_contain_text("180 × 100 cm was asked")
    assert figure(page, "Price") != before
    expect(width).to_be_focused()
    assert width.evaluate("field => field.selectionStart") == 1


def test_an_answer_from_before_a_mistake_is_marked_as_old(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_label("Width").fill("wide")
    expect(page.get_by_text("“wide” cannot be read as a measure").first).to_be_visible()
    expect(page.locator("#answer .old-words")).to_contain_text("from before the mistakes")
    expect(page.locator("#figures")).to_have_class("figures old")
    page.get_by_label("Width").fill("90 cm")
    expect(page.locator("#figures")).to_have_class("figures")
    assert page.get_by_label("Width").get_attribute("aria-invalid") is None


def test_an_order_survives_a_look_at_another_page(page: Page, address: str) -> None:
    page.goto(address)
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Half finished")
    page.get_by_role("link", name="Measurements").click()
    page.get_by_role("link", name="Orders").click()
    expect(page.get_by_label("Title")).to_have_value("Half finished")


def test_lines_are_moved_with_the_keyboard_alone(page: Page, address: str) -> None:
    page.goto(address)
    page.get_by_role("button", name="Move Section 1, stripe 1 up").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="Move Section 1, stripe 2 up")).to_be_focused()
    assert page.get_by_label("Colour of Section 1, stripe 1").input_value() == "rust"
    assert page.get_by_label("Colour of Section 1, stripe 2").input_value() == "teal"


def test_a_key_typed_while_a_button_is_at_work_is_kept(page: Page, address: str) -> None:
    page.goto(address)
    held: list[Route] = []
    page.route("**/", lambda route: held.append(route))  # noqa: PLW0108 - it must be a function
    page.get_by_role("button", name="Add an extra").click()
    page.get_by_label("Title").fill("Typed meanwhile")
    page.wait_for_timeout(500)
    assert len(held) == 2
    held[-1].continue_()
    expect(page.get_by_label("What", exact=True)).to_have_count(2)
    expect(page.get_by_label("Title")).to_have_value("Typed meanwhile")


def test_when_no_answer_comes_the_page_says_so_and_keeps_the_last(page: Page, address: str) -> None:
    page.goto(address)
    page.route("**/answer", lambda route: route.fulfill(status=500, body="no"))
    page.get_by_label("Width").fill("90 cm")
    expect(page.locator("#answer .old-words")).to_contain_text("No answer came")
    assert page.get_by_label("Width").input_value() == "90 cm"


def test_a_refusal_is_told_in_its_own_words_and_not_as_silence(page: Page, address: str) -> None:
    page.goto(address)
    refused = "<!doctype html><h1>That is more than can be taken at once.</h1>"
    page.route("**/answer", lambda route: route.fulfill(status=413, body=refused))
    page.get_by_label("Width").fill("90 cm")
    old = page.locator("#answer .old-words")
    expect(old).to_contain_text("That is more than can be taken at once.")
    expect(old).not_to_contain_text("running")


def test_a_slow_answer_is_marked_as_being_worked_out(page: Page, address: str) -> None:
    page.goto(address)
    held: list[Route] = []
    page.route("**/answer", lambda route: held.append(route))  # noqa: PLW0108
    page.get_by_label("Width").fill("90 cm")
    for part in ("#answer", "#figures"):
        expect(page.locator(part)).to_have_attribute("aria-busy", "true")
    expect(page.locator("#status")).to_have_text("Being worked out…")
    held[-1].continue_()
    expect(page.locator("#status")).to_contain_text("£")
    for part in ("#answer", "#figures"):
        expect(page.locator(part)).not_to_have_attribute("aria-busy", "true")


def test_a_half_typed_date_is_told_and_nothing_is_made_of_it(page: Page, address: str) -> None:
    page.goto(f"{address}blank")
    page.get_by_label("A customary size").select_option("Cot")
    until_answered(page)
    page.get_by_label("Wanted by").focus()
    page.keyboard.type("1")
    page.get_by_label("Title").focus()
    said = page.get_by_text("This date is only half typed")
    expect(said).to_be_visible()
    with page.expect_response("**/answer"):
        page.get_by_label("Title").fill("Typed elsewhere")
    expect(said).to_be_visible()
    page.get_by_role("button", name="Save the order file").click()
    expect(page.get_by_label("Wanted by")).to_be_focused()
    page.get_by_label("Wanted by").fill("2027-03-01")
    expect(said).to_have_count(0)


def test_lines_asked_for_while_one_is_being_added_are_added_too(page: Page, address: str) -> None:
    page.goto(address)
    held: list[Route] = []
    page.route("**/", lambda route: held.append(route))  # noqa: PLW0108
    extras = page.get_by_label("What", exact=True)
    before = extras.count()
    for _ in range(3):
        page.get_by_role("button", name="Add an extra").click()
    for number in (1, 2, 3):
        page.wait_for_timeout(100)
        held.pop().continue_()
        expect(extras).to_have_count(before + number)


def test_what_was_opened_stays_open_when_a_line_is_added_or_moved(page: Page, address: str) -> None:
    page.goto(address)
    page.locator("#answer summary").filter(has_text="in a row").click()
    page.locator("#answer summary").filter(has_text="An hour earns").click()
    page.get_by_text("Last rows, worked once").click()
    page.get_by_role("button", name="Add an extra").click()
    page.get_by_role("button", name="Copy Section 1, stripe 1").click()
    expect(page.get_by_label("Rows of Section 1, stripe 4")).to_be_visible()
    opened = page.locator("#answer details[open] summary")
    expect(opened).to_have_count(2)
    expect(
        page.locator("#order details[open] summary").filter(has_text="Last rows")
    ).to_be_visible()


def test_a_page_lives_through_a_restart_of_the_program(page: Page, tmp_path: Path) -> None:
    process, address = start_worktable(folder=tmp_path)
    page.goto(address)
    stop(process)
    page.get_by_label("Width").fill("90 cm")
    expect(page.locator("#answer .old-words")).to_contain_text("No answer came")
    port = address.rstrip("/").rpartition(":")[2]
    process, _ = start_worktable(port, folder=tmp_path)
    page.get_by_label("Width").fill("70 cm")
    expect(page.locator("#answer")).to_contain_text("70 × 100 cm was asked")
    with page.expect_download() as saving:
        page.get_by_role("button", name="Save the order file").click()
    saving.value.save_as(tmp_path / "order.toml")
    assert '"70 cm"' in (tmp_path / "order.toml").read_text("utf-8")
    stop(process)
