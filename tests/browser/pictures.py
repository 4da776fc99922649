"""The README's pictures: `python -m tests.browser.pictures` takes them all anew.

They show the demo's book on one day. Beside them stands what each page says, without its figures,
so that a test can tell pictures of pages that have changed since.
"""

from __future__ import annotations

import re
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

from tests.browser.papers import ON_THE_HOOK
from tests.browser.serving import BROWSERS, CALM, ROOT, serving
from tests.programs import find_program

FOLDER = ROOT / ".pictures"
WORDS = "words.txt"
"""What the pages of the pictures say, one paragraph each."""

DESK, PHONE = (1180, 820), (390, 780)

THE_ORDER = "orders/8"
"""The demo's own order."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """A page by its path, as it looks in a window of so many pixels."""

    name: str
    path: str
    window: tuple[int, int] = DESK


SHOTS = (
    Shot(name="orders", path=""),
    Shot(name="worktable", path=THE_ORDER),
    Shot(name="sizes", path="sizes"),
    Shot(name="quote", path="quotes/2026-005/page"),
    Shot(name="making", path=f"{ON_THE_HOOK}/making", window=PHONE),
    Shot(name="guide", path=f"{ON_THE_HOOK}/guide/row", window=PHONE),
)


def take_pictures(browser: Browser, address: str, folder: Path) -> dict[str, str]:
    """Take every picture into a folder; return what each page says, without its figures."""
    return {shot.name: _take(browser, address, shot, folder) for shot in SHOTS}


def _take(browser: Browser, address: str, shot: Shot, folder: Path) -> str:
    width, height = shot.window
    context = browser.new_context(
        viewport={"width": width, "height": height}, locale="en-GB", timezone_id="UTC"
    )
    page = context.new_page()
    page.goto(address + shot.path)
    page.screenshot(path=folder / f"{shot.name}.png")
    said = said_on(page)
    context.close()
    return said


def said_on(page: Page) -> str:
    """Return the words of a page in a line, without what is counted, dated or priced."""
    words: str = page.locator("body").inner_text()
    return " ".join(re.findall(r"[^\W\d_]{3,}", words))


def written_words(said: dict[str, str]) -> str:
    """Return what the pages say as it is kept beside the pictures."""
    return "\n".join(f"{name}: {words}\n" for name, words in said.items())


def demo() -> Iterator[str]:
    """Yield the address of the demo's book on its day."""
    with (
        tempfile.TemporaryDirectory() as folder,
        serving("tests.browser.demo_on_a_day", "--port", "0", folder=Path(folder)) as address,
    ):
        yield address


def main() -> int:
    """Take the pictures that the README shows."""
    chromium = find_program(*BROWSERS)
    if chromium is None:
        sys.stderr.write("Chromium is not installed: the pictures stay as they are.\n")
        return 1
    FOLDER.mkdir(exist_ok=True)
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=list(CALM))
        for address in demo():
            said = take_pictures(browser, address, FOLDER)
        browser.close()
    (FOLDER / WORDS).write_text(written_words(said), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
