"""The three notations that a value is written in: a file, a form, a record."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from quoting.core.ground.measures import Units
from quoting.core.workshop.stitches import Vocabulary
from quoting.notation import FILE_MARKS, YARN_LENGTH, Marks, Quantity


class Medium(StrEnum):
    """What is read or written.

    `file`: TOML that a maker writes; measures and money are text. `typed`: what stands in the
    fields of a form; all is text. `record`: JSON for a program; measures are numbers of the
    inside unit, so that nothing is lost.
    """

    FILE = "file"
    TYPED = "typed"
    RECORD = "record"


@dataclass(frozen=True, slots=True, kw_only=True)
class Notation:
    """How values stand in one document.

    `terms` is whose stitch names messages use, and files are written in; forms and records keep
    the canonical ones. `units` are those of a typed measure without any, `signs` the signs of the
    currency that a typed amount may bear.
    """

    medium: Medium
    terms: Vocabulary = Vocabulary.US
    marks: Marks = FILE_MARKS
    units: Units = Units.METRIC
    signs: tuple[str, ...] = ()

    def unit_of(self, quantity: Quantity) -> str:
        """Return the unit of a measure that is typed without one."""
        inches = self.units is Units.INCHES
        if quantity is YARN_LENGTH:
            return "yd" if inches else "m"
        return {"cm": "in", "g": "oz"}[quantity.base] if inches else quantity.base


FILE = Notation(medium=Medium.FILE)
RECORD = Notation(medium=Medium.RECORD)
