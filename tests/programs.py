"""Outside programs that some tests need: found, or the test is skipped, or it fails.

With `REQUIRE_ALL=1` in the environment a missing program is a failure, so that CI leaves out
nothing.
"""

from __future__ import annotations

import os
import shutil

import pytest


def find_program(*names: str) -> str | None:
    """Return the path of the first of these programs that is installed, or None."""
    return next((path for name in names if (path := shutil.which(name))), None)


def require_program(*names: str) -> str:
    """Return the path of the first of these programs; else skip the test, or fail it in CI."""
    path = find_program(*names)
    if path is not None:
        return path
    missing = f"{' or '.join(names)} is not installed"
    if os.environ.get("REQUIRE_ALL") == "1":
        pytest.fail(missing, pytrace=False)
    pytest.skip(missing)
