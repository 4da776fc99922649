"""The house stays readable: functions and modules are short, and every loop has an end to meet."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

PROJECT = Path(__file__).parents[1]
FILES = sorted(path for part in ("quoting", "exports") for path in (PROJECT / part).rglob("*.py"))
MOST_LINES, MOST_LINES_OF_A_FUNCTION = 250, 40


def nodes() -> Iterator[tuple[str, ast.AST]]:
    """Yield everything in the source, with where it stands."""
    for file in FILES:
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            yield f"{file.relative_to(PROJECT)}:{getattr(node, 'lineno', 0)}", node


def lines_of(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Return the lines of a function but for its docstring."""
    words = ast.get_docstring(function, clean=False)
    said = 0 if words is None else words.count("\n") + 1
    return (function.end_lineno or 0) - function.lineno + 1 - said


def test_there_is_a_house_to_look_at() -> None:
    assert len(FILES) > 200


def test_a_module_is_short_enough_to_be_read_at_once() -> None:
    lines = {str(file): len(file.read_text("utf-8").splitlines()) for file in FILES}
    assert {file: count for file, count in lines.items() if count > MOST_LINES} == {}


def test_a_function_is_short_enough_to_be_read_at_once() -> None:
    lines = {
        place: lines_of(node)
        for place, node in nodes()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    }
    assert {place: n for place, n in lines.items() if n > MOST_LINES_OF_A_FUNCTION} == {}


def test_a_loop_says_what_it_goes_on_for() -> None:
    loops = [(place, node) for place, node in nodes() if isinstance(node, ast.While)]
    assert [place for place, loop in loops if isinstance(loop.test, ast.Constant)] == []
