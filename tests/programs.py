"""Outside programs that some tests need: found, or the test is skipped, or it fails.

With `REQUIRE_ALL=1` in the environment a missing program is a failure, so that CI leaves out
nothing. At the end of a run, a line for each says how many tests were skipped for lack of it.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from collections import Counter
from collections.abc import Iterable, Iterator
from importlib.util import find_spec
from typing import NoReturn

import pytest

SKIPPED = "Skipped: "


def find_program(*names: str) -> str | None:
    """Return the path of the first of these programs that is installed, or None."""
    return next((path for name in names if (path := shutil.which(name))), None)


def require_program(*names: str) -> str:
    """Return the path of the first of these programs; else skip the test, or fail it in CI."""
    path = find_program(*names)
    if path is not None:
        return path
    return _leave_out(f"{' or '.join(names)} is not installed")


def require_module(module: str, *pythons: str) -> str:
    """Return the path of the first of these Pythons that has a module; else as above."""
    for python in filter(shutil.which, pythons):
        asked = subprocess.run([python, "-c", f"import {module}"], capture_output=True, check=False)
        if asked.returncode == 0:
            return python
    return _leave_out(f"the module {module} (Debian's python3-{module}) is not installed")


def require_package(package: str) -> None:
    """Check that a package of Python's is installed here; else as above."""
    if find_spec(package) is None:
        _leave_out(f"the package {package} is not installed")


def _leave_out(missing: str) -> NoReturn:
    """Skip the test for what is missing, or fail it in CI."""
    if os.environ.get("REQUIRE_ALL") == "1":
        pytest.fail(missing, pytrace=False)
    pytest.skip(missing)


def lines_on_skips(reports: Iterable[pytest.TestReport]) -> Iterator[str]:
    """Yield a line for each reason that tests were skipped for, with how many they were."""
    reasons = Counter(
        report.longrepr[2].removeprefix(SKIPPED)
        for report in reports
        if isinstance(report.longrepr, tuple)
    )
    for reason, count in sorted(reasons.items()):
        yield f"Skipped {count}: {reason}"
