"""The core stands alone: the standard library, itself, and nothing that reaches outside."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

import quoting.core

CORE = Path(next(iter(quoting.core.__path__)))
FILES = sorted(CORE.rglob("*.py"))
OUTSIDE = {
    "asyncio", "ctypes", "ftplib", "glob", "http", "io", "locale", "logging", "mmap",
    "multiprocessing", "os", "pathlib", "pickle", "random", "secrets", "shelve", "shutil",
    "signal", "smtplib", "socket", "socketserver", "sqlite3", "ssl", "subprocess", "sys",
    "tempfile", "threading", "time", "urllib", "uuid", "zoneinfo",
}  # fmt: skip
CLOCK_OR_FILE = {"today", "now", "utcnow", "open", "print", "input", "__import__"}


def imported(tree: ast.AST) -> Iterator[str]:
    """Yield the full name of every module imported, wherever in the file."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "an import says its whole name"
            yield node.module or ""


def called(tree: ast.AST) -> Iterator[str]:
    """Yield the last name of everything that is called."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            function = node.func
            yield getattr(function, "attr", getattr(function, "id", ""))


def test_there_is_a_core_to_look_at() -> None:
    assert len(FILES) > 30


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_a_file_of_the_core_imports_only_the_standard_library_and_the_core(file: Path) -> None:
    for name in imported(ast.parse(file.read_text("utf-8"))):
        inside = name == "quoting.core" or name.startswith("quoting.core.")
        assert inside or name.split(".")[0] in sys.stdlib_module_names, name


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.name)
def test_a_file_of_the_core_knows_no_clock_no_file_and_no_network(file: Path) -> None:
    tree = ast.parse(file.read_text("utf-8"))
    assert not {name.split(".")[0] for name in imported(tree)} & OUTSIDE
    assert not set(called(tree)) & CLOCK_OR_FILE
