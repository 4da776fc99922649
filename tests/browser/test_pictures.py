"""The README's pictures show pages as they are: whoever changes a page takes them anew."""

from __future__ import annotations

import re
from pathlib import Path

from playwright.sync_api import Browser

from tests.browser.pictures import (
    FOLDER,
    SHOTS,
    WORDS,
    demo,
    take_pictures,
    written_words,
)
from tests.browser.serving import ROOT


def test_the_pictures_of_the_readme_say_what_the_pages_say(
    browser: Browser, tmp_path: Path
) -> None:
    for address in demo():
        said = take_pictures(browser, address, tmp_path)
    kept = (FOLDER / WORDS).read_text(encoding="utf-8")
    assert kept == written_words(said), "take them anew: python -m tests.browser.pictures"


def test_the_readme_shows_each_picture_and_no_other() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    shown = re.findall(r"\.pictures/(\w+)\.png", readme)
    assert sorted(shown) == sorted(shot.name for shot in SHOTS)
    assert all((FOLDER / f"{name}.png").stat().st_size for name in shown)
