"""A construction of the tests' own: one square from the centre, in single crochet, of one colour.

It is all in this folder. What the program asks of a construction it answers here, and `listed`
puts it into the tables that the program's own constructions stand in.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, MutableMapping
from dataclasses import dataclass, replace
from typing import Any, ClassVar

from exports.drawing import bodies as drawings
from exports.drawing.bands import draw_rounds
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.place import Place, at
from quoting.core.plan import body_plans
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.border import StitchesAlong
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.schema import blanket_shapes
from quoting.schema.figures import COUNT
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import NAME
from quoting.web.orders import body_forms as forms
from quoting.web.orders.body_form import BodyForm
from quoting.wording import bodies as words

WORD = "square"
GROWTH = 8
"""Stitches that each round of single crochet has more: 3 in each corner (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlainSquare:
    """A square of so many rounds, or as many as come nearest to the width."""

    colour: str
    rounds: int | None = None
    main_colours: ClassVar[tuple[str, ...]] = ()
    also_worked: ClassVar[tuple[str, ...]] = ()
    goes_by_width: ClassVar[bool] = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("rounds", self.rounds, least=1, most=500)
        checks.done()

    def colours_with_places(self) -> Iterator[tuple[Place, str]]:
        yield at("blanket", WORD, "colour"), self.colour

    def stitches_with_places(self) -> Iterator[tuple[Place, str]]:
        return iter(())

    def motifs_with_places(self) -> Iterator[tuple[Place, str]]:
        return iter(())

    def recoloured(self, colour: str, other: str) -> PlainSquare:
        return replace(self, colour=other) if self.colour == colour else self

    def resized(self) -> PlainSquare:
        return replace(self, rounds=None)


def plan_square(body: PlainSquare, setting: Setting) -> BodyPlan:
    """Return the rounds from the centre outwards. Errors: `width-too-small`."""
    gauge = setting.gauges[setting.design.kind]
    rounds = body.rounds or round(setting.width_cm / 2 / gauge.height_cm)
    if rounds < 1:
        smallest = gauge.height_cm + 2 * setting.border_cm
        raise refuse(at("blanket", "width"), "width-too-small", smallest_cm=smallest)
    side_cm = 2 * rounds * gauge.height_cm
    return BodyPlan(
        passes=tuple(_round(number, body, setting) for number in range(1, rounds + 1)),
        stitches=GROWTH * rounds,
        width_cm=side_cm,
        height_cm=side_cm,
        rim=[StitchesAlong(GROWTH * rounds // 4, gauge)] * 4,
        ends=Edge.START,
    )


def _round(number: int, body: PlainSquare, setting: Setting) -> Pass:
    stitch = setting.design.stitch
    return Pass(
        work=Work.ROUND,
        number=number,
        colour=body.colour,
        stitch=stitch,
        stitches={stitch: GROWTH * number},
        starts=Edge.START,
        ends=Edge.START,
        height_cm=setting.gauges[setting.design.kind].height_cm,
    )


_square = Fields(PlainSquare)
SQUARE = Shape(
    PlainSquare,
    _square(lambda square: square.colour, NAME, "Colour of the square"),
    _square(lambda square: square.rounds, COUNT, "Rounds"),
)

SQUARE_FORM = BodyForm(
    words="a plain square",
    templates="orders/square",
    start=lambda _, yarn: {WORD: {"colour": next(iter(yarn.colours))}},
    new_lines={},
    line_names={},
)


def listed(put: Callable[[MutableMapping[Any, Any], object, object], None]) -> None:
    """Put the construction into every table, by a function that takes it out again later."""
    put(body_plans.PLANS, PlainSquare, plan_square)
    put(blanket_shapes.SHAPES, WORD, SQUARE)
    put(words.TOLD, PlainSquare, lambda body: (f"{body.rounds or 'all'} {body.colour}",))
    put(drawings.DRAWN, PlainSquare, draw_rounds)
    put(forms.FORMS, PlainSquare, SQUARE_FORM)
