"""Which motif lies where in a blanket of joined ones."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.order.joined_squares import JoinMethod


@dataclass(frozen=True, slots=True, kw_only=True)
class SquaresGrid:
    """So many `columns` and `rows` of motifs of one side, `gap_cm` between two of them.

    `layouts` has the layout of each by its number from 0, row by row from the top left; `method`
    is their join.
    """

    columns: int
    rows: int
    side_cm: float
    gap_cm: float
    layouts: tuple[int, ...]
    method: JoinMethod = JoinMethod.AS_YOU_GO

    @property
    def count(self) -> int:
        """How many motifs there are."""
        return self.columns * self.rows

    @property
    def shared_edges(self) -> int:
        """The edges at which two motifs meet: R(C - 1) + C(R - 1)."""
        return self.rows * (self.columns - 1) + self.columns * (self.rows - 1)

    @property
    def seam_lines(self) -> int:
        """The straight lines that the edges lie on."""
        return (self.columns - 1) + (self.rows - 1)

    def layout_at(self, column: int, row: int) -> int:
        """Return the layout of the motif at a column and a row, from 0."""
        return self.layouts[row * self.columns + column]
