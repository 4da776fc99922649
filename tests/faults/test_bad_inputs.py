"""Whatever comes in, it is answered: no traceback, no fault of the program's own."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest

from tests.faults.answering import KINDS

EACH = 60


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_bad_inputs_of_every_kind_are_answered(kind: Callable[[Random], None]) -> None:
    for seed in range(EACH):
        kind(Random(f"{kind.__name__} {seed}"))
