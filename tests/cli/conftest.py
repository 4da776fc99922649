"""The demo's files, in a folder of their own."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from quoting.places import demo_order, demo_workshop


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """Return a folder with a copy of the demo's order and workshop."""
    shutil.copy(demo_order(), tmp_path / "order.toml")
    shutil.copy(demo_workshop(), tmp_path / "workshop.toml")
    return tmp_path
