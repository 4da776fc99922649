"""How a blanket grows: the constructions there are, as one closed union.

A body holds what is particular to its construction and answers, whichever it is:

- `colours_with_places`, `stitches_with_places`, `motifs_with_places`: what it names, each with its
  place in the file; `also_worked`: stitches that it is worked in besides and that nobody names;
- `main_colours`, `recoloured`: of which colours one could be done without, and how;
- `goes_by_width`: whether its width alone is its size;
- `resized`: itself without what belongs to one size.

What a construction is besides stands in tables, by the class of the body. In all of these:
`core.plan.body_plans.PLANS` (its passes, its size, what a border is worked along),
`schema.blanket_shapes.SHAPES` (its keys), `wording.bodies.TOLD` (its words),
`exports.drawing.bodies.DRAWN` (its picture) and `web.orders.body_forms.FORMS` (its part of the
form). In these, where it has what they ask for:
`core.weighing.neighbours.NEAR` (what there may be one less or one more of),
`core.weighing.calmer_designs.CALMER` (how fewer ends are found, and `wording.calmer.CALMER_WORDS`
how that is said), `cli.body_facts.FACTS` (its counts in the table of a quote) and
`exports.records.construction_record.OWN` (its own table in the JSON).

Whatever follows the plan asks the plan and not the body: `Plan.grid` is there where motifs are
joined, `Plan.counted` where rounds grow, `Plan.centre` where they grow from the blanket's own
centre, and `Plan.in_rows` says whether the body is in rows. Besides the tables only these know a
class of body: `core.weighing.other_joins` (joins that look alike), `wording.closing` (a blanket of
motifs is told by its motif) and `web.orders.body_forms` (who has measured motifs alone begins with
squares). `tests/constructions` holds all this, and walks every construction through all of them.
"""

from __future__ import annotations

from typing import TypeAlias

from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares

Body: TypeAlias = InRows | FromCentre | JoinedSquares
