"""Outside programs that some tests need: found, or the test is skipped, or it fails.

With `REQUIRE_ALL=1` in the environment a missing program is a failure, so that CI leaves out
nothing. At the end of a run, a line for each says how many tests were skipped for lack of it.
"""

from __future__ import annotations

import os
import shutil
from collections import Counter
from collections.abc import Iterable, Iterator

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
    missing = f"{' or '.join(names)} is not installed"
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
