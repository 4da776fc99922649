"""Print the lowest version of every package that pyproject.toml lets stand beside the program.

pip takes the lines as constraints: what is installed with them is what is promised to do.
"""

from __future__ import annotations

import re
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

_FLOOR = re.compile(r"(?P<name>[\w.-]+)\s*>=\s*(?P<version>[\w.]+)[^;]*(?P<marker>;.*)?")


def floors(project: dict[str, object]) -> Iterator[str]:
    """Yield a constraint for each requirement that has a floor."""
    needed = project["dependencies"]
    assert isinstance(needed, list)  # noqa: S101 - for the types; pyproject has a list
    for requirement in needed:
        floor = _FLOOR.fullmatch(requirement)
        if floor is None:
            raise SystemExit(f"pyproject.toml: {requirement} has no lowest version")
        yield f"{floor['name']}=={floor['version']}{floor['marker'] or ''}"


def main(pyproject: Path) -> None:
    """Print the constraints."""
    project = tomllib.loads(pyproject.read_text("utf-8"))["project"]
    sys.stdout.writelines(f"{line}\n" for line in floors(project))


if __name__ == "__main__":
    main(Path(__file__).parents[1] / "pyproject.toml")
