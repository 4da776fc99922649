"""The network is never asked: a stand-in answers."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
import responses


@pytest.fixture
def bank() -> Iterator[responses.RequestsMock]:
    """Stand in for the network: only what a test adds is answered."""
    with responses.RequestsMock() as mock:
        yield mock
