"""What is refused, by its code."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused


def refused(ask: Callable[[], object]) -> MistakeCode:
    """Return the code that something is refused with."""
    with pytest.raises(Refused) as told:
        ask()
    return told.value.mistakes[0].code
