"""How each construction is planned."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.plan.body_plan import BodyPlan, Setting
from quoting.core.plan.centre.centre_plan import plan_centre
from quoting.core.plan.rows.row_plan import plan_rows
from quoting.core.plan.squares.squares_plan import plan_squares

PLANS: dict[type[Body], Callable[[Any, Setting], BodyPlan]] = {
    InRows: plan_rows,
    FromCentre: plan_centre,
    JoinedSquares: plan_squares,
}
"""The planner of each kind of body, which takes that kind alone."""


def plan_body(setting: Setting) -> BodyPlan:
    """Return the plan of the body of a design. Errors: as its construction's."""
    body = setting.design.body
    return PLANS[type(body)](body, setting)
