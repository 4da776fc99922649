"""A whole workshop typed into an empty book, field by field, is the one of its file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_workshop
from quoting.schema.notation import FILE
from quoting.schema.workshop_shape import WORKSHOP
from quoting.web.first_steps.steps import STEPS
from quoting.web.shop import open_shop
from quoting.web.workshop.own_form import sent_workshop
from quoting.web.workshop.own_pages import MEASUREMENTS, YARN, OwnPage
from quoting.web.workshop.own_pages import WORKSHOP as WORKSHOP_PAGE
from quoting.web.workshop.renaming import WAS
from tests.browser.test_own_pages import served
from tests.examples import TODAY

Wanted = Mapping[str, str]
SEEN = ':not([type="hidden"])'


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[str]:
    """Serve a book with nothing in it."""
    with served(tmp_path, "--book", str(tmp_path / "book.db")) as address:
        yield address


def texts_of(workshop: Workshop) -> Wanted:
    """Return the text of every field that says the workshop, by the field's name."""
    shop = open_shop(workshop, today=lambda: TODAY)
    sent = sent_workshop(workshop, shop).items()
    return {name: text for name, text in sent if not name.endswith(f".{WAS}")}


def field(page: Page, name: str) -> Locator:
    return page.locator(f'#own [name="{name}"]{SEEN}')


def add_lines(page: Page, name: str) -> None:
    """Press the buttons that add the lines which a field stands in, where there are such."""
    parts = name.split(".")
    for position, part in enumerate(parts):
        if not part.isdigit():
            continue
        line, button = ".".join(parts[: position + 1]), f"add {'.'.join(parts[:position])}"
        adds = page.locator(f'#own button[value="{button}"]')
        if not page.locator(f'#own [name^="{line}."]{SEEN}').count() and adds.count():
            with page.expect_navigation():
                adds.click()


def type_into(there: Locator, text: str) -> None:
    """Unfold what a field stands in, and type, choose or tick what is not there yet."""
    tag, kind, said = there.evaluate(
        "one => [one.tagName, one.type, one.type === 'checkbox' ? '' : one.value]"
    )
    if said == text:
        return
    for folded in there.locator("xpath=ancestor::details[not(@open)]/summary").all():
        folded.click()
    if tag == "SELECT":
        there.select_option(text)
    elif kind == "checkbox":
        there.set_checked(bool(text))
    else:
        there.fill(text)


def type_all(page: Page, wanted: Wanted) -> set[str]:
    """Type all that has a field here; return the names of these fields."""
    typed = set()
    for name, text in wanted.items():
        there = field(page, name)
        if not there.count():
            add_lines(page, name)
        if there.count():
            type_into(there, text)
            typed.add(name)
    return typed


def leave_blank(page: Page, wanted: Wanted) -> None:
    """Empty what the questions of a new book filled in and the workshop does not say."""
    filled = page.locator(f'#own input[name]:not([name^="clock."]){SEEN}').evaluate_all(
        "all => all.filter(one => one.type === 'checkbox' ? one.checked : one.value)"
        ".map(one => one.name)"
    )
    for name in set(filled) - set(wanted):
        there = field(page, name)
        if there.get_attribute("type") == "checkbox":
            there.set_checked(checked=False)
        else:
            there.fill("")


def begin(page: Page, address: str, wanted: Wanted) -> None:
    """Answer the questions of a new book."""
    page.goto(f"{address}/first-steps")
    for step in STEPS:
        expect(page.get_by_role("heading", level=2).first).to_have_text(step.title)
        type_all(page, {name: text for name, text in wanted.items() if step.has(name)})
        page.get_by_role("button", name="Next", exact=True).last.click()
    page.get_by_role("button", name="Begin with this").click()
    expect(page).to_have_url(f"{address}/orders")


def enter(page: Page, address: str, own: OwnPage, wanted: Wanted) -> None:
    """Type a page's part of the workshop, every field of it, and save."""
    page.goto(f"{address}/{own.name}")
    of_page = {name: text for name, text in wanted.items() if own.has(name)}
    assert type_all(page, of_page) == set(of_page)
    leave_blank(page, of_page)
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_text("Saved.")).to_be_visible()


def file_of(page: Page, folder: Path) -> Path:
    """Take the workshop out as a file, by the link that the page has for it."""
    page.get_by_role("link", name="Earlier versions, and the file").click()
    with page.expect_download() as download:
        page.get_by_role("link", name="as a file").first.click()
    path = folder / "taken out.toml"
    download.value.save_as(path)
    return path


def test_the_demo_typed_by_hand_comes_out_as_the_file_that_it_is(
    page: Page, empty: str, tmp_path: Path
) -> None:
    demo = load_workshop(demo_workshop())
    wanted = texts_of(demo)
    begin(page, empty, wanted)
    for own in (YARN, MEASUREMENTS, WORKSHOP_PAGE):
        enter(page, empty, own, wanted)
    again = load_workshop(file_of(page, tmp_path))
    assert WORKSHOP.write(again, FILE) == WORKSHOP.write(demo, FILE)
    assert again == demo
