"""How a blanket grows: the constructions there are, as one closed union.

A body holds what is particular to its construction and answers, whichever it is:

- `colours_with_places`, `stitches_with_places`, `motifs_with_places`: what it names, each with its
  place in the file; `also_worked`: stitches that it is worked in besides and that nobody names;
- `main_colours`, `recoloured`: of which colours one could be done without, and how;
- `resized`: itself without what belongs to one size.

What a construction is besides stands in one table a floor, by the class of the body:
`body_plans.PLANS` (its passes, its size, what a border is worked along),
`calmer_designs.CALMER` (how its stripes are calmed, if they can be),
`neighbours.NEAR` (what there may be one less or one more of, and `closing.COUNTS` what it counts),
`schema.blanket_shapes.SHAPES` (its keys),
`wording.bodies.TOLD` (its words), `exports.drawing.bodies.DRAWN` (its picture) and
`web.bodies.FORMS` (its part of the form). Nothing else asks which construction it is.
"""

from __future__ import annotations

from typing import TypeAlias

from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares

Body: TypeAlias = InRows | FromCentre | JoinedSquares
