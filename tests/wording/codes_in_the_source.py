"""Finds every code of a mistake or a caution, with its facts, in the source of the program."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path

import quoting
from quoting.core.ground.codes import CautionCode, MistakeCode

PACKAGE = Path(quoting.__file__).parent
PARTS = ("core", "files", "schema", "notation", "store")
SOURCES = [
    *(path for part in PARTS for path in (PACKAGE / part).rglob("*.py")),
    PACKAGE / "rates.py",
    PACKAGE / "web" / "orders" / "form_room.py",
]

CODES: dict[str, type[StrEnum]] = {"MistakeCode": MistakeCode, "CautionCode": CautionCode}

CODE = re.compile(r"[a-z]+(-[a-z]+)+")


def called(node: ast.Call) -> str:
    name = node.func
    return name.attr if isinstance(name, ast.Attribute) else getattr(name, "id", "")


def text_of(node: ast.expr | None) -> str | None:
    value = node.value if isinstance(node, ast.Constant) else None
    return value if isinstance(value, str) else None


def code_of(node: ast.expr) -> str | None:
    """Return the code that a member of one of the enums stands for."""
    if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
        codes = CODES.get(node.value.id)
        return codes[node.attr].value if codes else None
    return None


def facts_of(node: ast.Call, tables: dict[str, set[str]]) -> set[str]:
    """Return the names of the facts: keywords, a table's keys, those of a table spread out."""
    names: set[str] = set()
    for word in node.keywords:
        names |= {word.arg} if word.arg else tables[ast.unparse(word.value)]
    for fact in node.args:
        names |= keys(fact) if isinstance(fact, ast.Dict) else tables.get(ast.unparse(fact), set())
    return names


def keys(table: ast.Dict) -> set[str]:
    return {key for key in map(text_of, table.keys) if key}


def named_tables(tree: ast.Module) -> dict[str, set[str]]:
    """Return the keys of every table that a module gives a name to."""
    return {
        ast.unparse(node.targets[0]): keys(node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Dict)
    }


def coded_calls(names: set[str], position: int) -> Iterator[tuple[str, set[str]]]:
    """Yield each code that is handed to one of these functions, with the facts beside it."""
    for path in SOURCES:
        tree = ast.parse(path.read_text("utf-8"))
        tables = named_tables(tree)
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call) or called(node) not in names:
                continue
            code = code_of(node.args[position]) if len(node.args) > position else None
            if code is not None:
                yield code, facts_of(node, tables)


def mistake_calls() -> list[tuple[str, set[str]]]:
    return list(coded_calls({"refuse", "add", "close", "Mistake"}, 1))


def caution_calls() -> list[tuple[str, set[str]]]:
    return list(coded_calls({"for_maker", "for_buyer"}, 0))


def constants(*paths: Path) -> set[str]:
    """Return the texts that look like codes, but for the words of closed choices."""
    texts: set[str | None] = set()
    for path in paths:
        tree = ast.parse(path.read_text("utf-8"))
        choices = [n for n in ast.walk(tree) if isinstance(n, ast.ClassDef) and is_choice(n)]
        words = {id(inner) for choice in choices for inner in ast.walk(choice)}
        nodes = [n for n in ast.walk(tree) if isinstance(n, ast.Constant) and id(n) not in words]
        texts |= {text_of(node) for node in nodes}
    return {text for text in texts if text and CODE.fullmatch(text)}


def is_choice(node: ast.ClassDef) -> bool:
    return any(isinstance(base, ast.Name) and base.id == "StrEnum" for base in node.bases)
