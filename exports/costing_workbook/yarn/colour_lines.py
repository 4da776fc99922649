"""Where the figures of the colours stand: one line a colour, found by its name."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.yarn.found_lines import FoundLines
from exports.sheets.cells import Span

TITLE = "Yarn used of each colour"


@dataclass(frozen=True, slots=True)
class ColourLines:
    """The lines of *What each colour takes*, as other lists and sheets read them, by the colour."""

    found: FoundLines

    @property
    def short_column(self) -> Span:
        """The lengths that the colours are short of."""
        return self.found.lines.column("P")

    def stitches(self, colour: str) -> str:
        """Return the stitches and chains that were counted."""
        return self.found.total("E", colour)

    @property
    def all_stitches(self) -> str:
        """All stitches and chains that were counted, of all colours."""
        return f"SUM({self.found.lines.column('E')})"

    def length_in_stitches(self, colour: str) -> str:
        """Return the yarn in them, in the long unit."""
        return self.found.total("F", colour)

    def expected(self, colour: str) -> str:
        """Return all the yarn that is expected, in the long unit."""
        return self.found.total("K", colour)

    def to_have(self, colour: str) -> str:
        """Return the yarn to have, in the long unit."""
        return self.found.total("N", colour)

    def spare(self, colour: str) -> str:
        """Return the yarn of all balls beyond that to have, in the long unit."""
        return f"({self.found.total('O', colour)}-{self.to_have(colour)})"

    def grams(self, colour: str) -> str:
        """Return the weight that is expected, in whole grams."""
        return self.found.total("Q", colour)

    def shelf_grams(self, colour: str) -> str:
        """Return what of it is from the shelf, in whole grams."""
        return self.found.total("R", colour)

    def balls_bought(self, colour: str) -> str:
        """Return the balls that are bought."""
        return self.found.total("S", colour)

    def length_per_gram(self, colour: str) -> str:
        """Return the length of a gram, by the label, in the long unit."""
        return self.found.one("U", colour)
