"""Customary blanket sizes, each with where it comes from."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path

from quoting.notation import FILE_MARKS, read_measure


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A size that people ask for by its name; `source` says who does, or what it covers."""

    name: str
    width_cm: float
    height_cm: float
    source: str


def read_sizes(path: Path) -> tuple[Size, ...]:
    """Return the sizes in a file, in its order."""
    content = tomllib.loads(path.read_text("utf-8"))
    return tuple(
        Size(
            name=entry["name"],
            width_cm=read_measure(entry["width"], FILE_MARKS),
            height_cm=read_measure(entry["height"], FILE_MARKS),
            source=content["sources"][entry["from"]],
        )
        for entry in content["sizes"]
    )
