"""What leads to another page waits until that page is there whole.

Playwright waits only until the next page has begun. What a test reads at once, without ``expect``,
may then be half a page, or one that has no style yet: seldom, and most often on a busy machine.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import wraps

import pytest
from playwright.sync_api import Locator

LEADING_ON = ("click", "press")
"""Names of the deeds, of those that tests do, that can lead to another page."""


@contextmanager
def patient_deeds() -> Iterator[None]:
    """Let clicks and keys wait meanwhile for the page to which they lead."""
    with pytest.MonkeyPatch.context() as patch:
        for name in LEADING_ON:
            patch.setattr(Locator, name, _patient(getattr(Locator, name)))
        yield


def _patient(deed: Callable[..., None]) -> Callable[..., None]:
    """Return a locator's deed that waits for its page afterwards."""

    @wraps(deed)
    def waiting(locator: Locator, *args: object, **options: object) -> None:
        deed(locator, *args, **options)
        if not locator.page.is_closed():
            locator.page.wait_for_load_state()

    return waiting
