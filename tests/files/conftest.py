"""The demo's files, and ways to spoil them."""

from collections.abc import Callable

import pytest

from quoting.core.ground.errors import Mistake, Refused
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_order_text, load_workshop, load_workshop_text
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

Edits = tuple[tuple[str, str], ...]


def edited(text: str, edits: Edits) -> str:
    for old, new in edits:
        assert text.count(old) >= 1, old
        text = text.replace(old, new, 1)
    return text


@pytest.fixture(scope="session")
def workshop() -> Workshop:
    return load_workshop(demo_workshop())


def found(read: Callable[[], object]) -> dict[str, Mistake]:
    with pytest.raises(Refused) as refused:
        read()
    mistakes = {mistake.path: mistake for mistake in refused.value.mistakes}
    assert len(mistakes) == len(refused.value.mistakes)
    return mistakes


@pytest.fixture(scope="session")
def mistakes():
    """Return the mistakes that reading anything is refused for, by place."""
    return found


@pytest.fixture(scope="session")
def order_mistakes(workshop):
    """Return the mistakes in the demo's order after some edits, by place."""
    text = EVERY_KEY_OF_AN_ORDER.read_text("utf-8")
    return lambda *edits: found(lambda: load_order_text(edited(text, edits), workshop))


@pytest.fixture(scope="session")
def workshop_mistakes():
    """Return the mistakes in the demo's workshop after some edits, by place."""
    text = demo_workshop().read_text("utf-8")
    return lambda *edits: found(lambda: load_workshop_text(edited(text, edits)))
