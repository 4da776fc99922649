"""A number of any exponent or length is refused in words wherever a file has a number."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import suppress

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_order_text, load_workshop_text
from quoting.wording import FILE_SPEECH, mistake_sentence
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

ORDER = EVERY_KEY_OF_AN_ORDER.read_text("utf-8")
WORKSHOP = demo_workshop().read_text("utf-8")
HUGE = ["1e1000000", "-1e1000000", "1e999999999999999999999", "nan", "-inf", "9" * 4000]
TOO_LONG = "9" * 5000


def with_each_number(text: str, number: str) -> Iterator[str]:
    """Yield a file again and again, each time another of its numbers and measures exchanged."""
    text = re.sub(r"# .*", "", text)  # numbers that are only talked of
    for found in re.finditer(r"(?<=[=\[,] )-?\d+(\.\d+)?(?=[\s,\]}])", text):
        yield text[: found.start()] + number + text[found.end() :]


def told(text: str, workshop: Workshop | None) -> str:
    with pytest.raises(Refused) as refused:
        load_order_text(text, workshop) if workshop else load_workshop_text(text)
    return " ".join(mistake_sentence(m, FILE_SPEECH) for m in refused.value.mistakes)


@pytest.mark.parametrize("number", [*HUGE, TOO_LONG], ids=lambda number: number[:20])
def test_in_every_place_of_both_files(workshop: Workshop, number: str) -> None:
    orders = list(with_each_number(ORDER, number))
    workshops = list(with_each_number(WORKSHOP, number))
    assert len(orders) > 8
    assert len(workshops) > 30
    for text in orders:
        assert told(text, workshop)
    for text in workshops:
        assert told(text, None)


@pytest.mark.parametrize("number", ["1e-1000000", "1e-99", "0.0000000000000000000000000001"])
def test_next_to_nothing_is_read_as_nothing_or_refused(workshop: Workshop, number: str) -> None:
    for text in with_each_number(ORDER, number):
        with suppress(Refused):
            load_order_text(text, workshop)
