"""How the tests are run: from the project's folder, and the same examples again in CI.

`--hypothesis-profile=deep` takes many more random cases than a daily run does.
"""

import os
import sys
from collections import defaultdict
from collections.abc import Generator, Iterator
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from coverage import Coverage
from hypothesis import HealthCheck, settings

sys.path.insert(0, str(Path(__file__).parents[1]))

from flask import Flask

from tests.compiled_templates import CompiledOnce
from tests.programs import lines_on_skips
from tests.scheduling import SharingScheduling

Flask.jinja_options = {"bytecode_cache": CompiledOnce()}

SLOW_FOLDERS = {"browser", "faults", "workbook"}
"""Tests with a browser, with a spreadsheet program, with thousands of spoilt inputs."""

MEASURED_FOLDERS = {"constructions", "core", "files", "guide", "published", "rates", "schema"}
"""Where it is measured which lines of the core are reached: that makes tests twice as slow."""

settings.register_profile(
    "here", deadline=None, max_examples=100, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("ci", settings.get_profile("here"), derandomize=True)
settings.register_profile("deep", settings.get_profile("here"), max_examples=3000)
settings.load_profile("ci" if os.environ.get("CI") else "here")


def pytest_addoption(parser: pytest.Parser) -> None:
    """Let a run take some tests of each file: what a version breaks, it breaks in many of them."""
    parser.addoption("--one-in", type=int, default=1, metavar="N", help="one test in N of a file")


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Mark as slow what a quick run leaves out: whole folders, and random cases everywhere."""
    for item in items:
        random_cases = hasattr(getattr(item, "obj", None), "hypothesis")
        if random_cases or not SLOW_FOLDERS.isdisjoint(_folders(item)):
            item.add_marker(pytest.mark.slow)
    taken, left_out = _one_in(config.getoption("one_in"), items)
    items[:] = taken
    config.hook.pytest_deselected(items=left_out)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Stop measuring for a test, and what it is set up with, that is not of the core's answers.

    The lines of the core are to be reached by tests of these, not of pages or papers.
    """
    measuring = Coverage.current()
    if measuring is None or not MEASURED_FOLDERS.isdisjoint(_folders(item)):
        return (yield)
    measuring.stop()
    try:
        return (yield)
    finally:
        measuring.start()


def _folders(item: pytest.Item) -> tuple[str, ...]:
    return item.path.relative_to(Path(__file__).parent).parts[:-1]


def _one_in(many: int, items: list[pytest.Item]) -> tuple[list[pytest.Item], list[pytest.Item]]:
    """Return the first of every so many tests of each file, and those that are left out."""
    numbers: defaultdict[Path, Iterator[int]] = defaultdict(count)
    parts: tuple[list[pytest.Item], list[pytest.Item]] = ([], [])
    for item in items:
        parts[bool(next(numbers[item.path]) % many)].append(item)
    return parts


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: Any) -> SharingScheduling:
    """Return how tests are given out where several processes run them."""
    return SharingScheduling(config, log)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say in a line for each missing program how many tests were skipped for lack of it."""
    for line in lines_on_skips(terminalreporter.getreports("skipped")):
        terminalreporter.write_line(line)
