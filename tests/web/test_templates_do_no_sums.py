"""Pages show what the core or a view has reckoned: a template reckons nothing."""

from __future__ import annotations

from pathlib import Path

import pytest
from jinja2 import Environment, meta, nodes

from quoting.places import templates_folder

FOLDER = templates_folder()
TEMPLATES = sorted(FOLDER.rglob("*.html"))
SUMS = (
    nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Neg,
)  # fmt: skip
SUMMING = {"sum", "round", "abs", "int", "float"}


def named(template: Path) -> str:
    return template.relative_to(FOLDER).as_posix()


def sums_in(source: str) -> list[int]:
    """Return the lines of a template that add, subtract, multiply, divide or round."""
    tree = Environment(autoescape=True).parse(source)
    summed = [node.lineno for node in tree.find_all(SUMS)]
    filtered = (node for node in tree.find_all(nodes.Filter) if node.name in SUMMING)
    return [*summed, *(node.lineno for node in filtered)]


@pytest.mark.parametrize("template", TEMPLATES, ids=named)
def test_no_template_does_a_sum(template: Path) -> None:
    assert sums_in(template.read_text("utf-8")) == []


def test_a_sum_would_be_found() -> None:
    assert sums_in("{{ total - deposit }}\n{{ lines | sum }} {{ a ~ b }}") == [1, 2]


@pytest.mark.parametrize("name", ["blocks.html", "paper.html"])
def test_a_paper_knows_no_more_than_its_blocks(name: str) -> None:
    tree = Environment(autoescape=True).parse((FOLDER / "papers" / name).read_text("utf-8"))
    assert meta.find_undeclared_variables(tree) <= {"paper", "kind_of", "drawn", "dot", "url_for"}
