"""How the tests are run: from the project's folder, and the same examples again in CI.

`--hypothesis-profile=deep` takes many more random cases than a daily run does.
"""

import os
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

sys.path.insert(0, str(Path(__file__).parents[1]))

from flask import Flask

from tests.compiled_templates import CompiledOnce
from tests.programs import lines_on_skips

Flask.jinja_options = {"bytecode_cache": CompiledOnce()}

SLOW_FOLDERS = {"browser", "faults", "workbook"}
"""Tests with a browser, with a spreadsheet program, with thousands of spoilt inputs."""

SHARING_FOLDERS = {"workbook", "comparison"}
"""Where the tests of a whole folder share a round of the spreadsheet program."""

UNMEASURED_FOLDERS = {"browser", "faults", "web", "workbook"}
"""Where it is not measured which lines of the core are reached: that makes tests twice as slow."""

settings.register_profile(
    "here", deadline=None, max_examples=100, suppress_health_check=[HealthCheck.too_slow]
)
settings.register_profile("ci", settings.get_profile("here"), derandomize=True)
settings.register_profile("deep", settings.get_profile("here"), max_examples=3000)
settings.load_profile("ci" if os.environ.get("CI") else "here")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark as slow what a quick run leaves out: whole folders, and random cases everywhere.

    The lines of the core are to be reached by tests of its answers, not of pages or papers.
    """
    for item in items:
        folders = item.path.relative_to(Path(__file__).parent).parts[:-1]
        if not UNMEASURED_FOLDERS.isdisjoint(folders):
            item.add_marker(pytest.mark.no_cover)
        random_cases = hasattr(getattr(item, "obj", None), "hypothesis")
        if random_cases or not SLOW_FOLDERS.isdisjoint(folders):
            item.add_marker(pytest.mark.slow)
        item.add_marker(pytest.mark.xdist_group(_group_of(item, folders)))


def _group_of(item: pytest.Item, folders: tuple[str, ...]) -> str:
    """Return what tests are run in one process together: those that share what is slow to make."""
    return folders[-1] if folders and folders[-1] in SHARING_FOLDERS else item.path.stem


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say in a line for each missing program how many tests were skipped for lack of it."""
    for line in lines_on_skips(terminalreporter.getreports("skipped")):
        terminalreporter.write_line(line)
