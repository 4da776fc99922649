"""Large orders one at a time, so that they never hold up everybody else's small ones."""

from __future__ import annotations

from threading import BoundedSemaphore, Lock

from flask import Flask, current_app, g
from werkzeug.exceptions import TooManyRequests

from quoting.core.estimate.estimate import work_of
from quoting.core.order.order import Order
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.workshop import Workshop

LIGHT_PASSES = 700
"""Of work, as `work_of` has it, that waits for nobody: some hundredths of a second."""

MOST_WAITING = 3
"""Large orders that wait for the one in hand; any more are asked to come again."""

SECONDS = 20
"""What they wait at the most; the largest order takes a few."""


class Turns:
    """One turn for all large orders."""

    def __init__(self) -> None:
        self._turn = Lock()
        self._places = BoundedSemaphore(MOST_WAITING)

    def take(self) -> None:
        """Wait for the turn. Errors: TooManyRequests where too many wait already, or too long."""
        if self._turn.acquire(blocking=False):
            return
        if not self._places.acquire(blocking=False):
            raise TooManyRequests(retry_after=SECONDS)
        try:
            if not self._turn.acquire(timeout=SECONDS):
                raise TooManyRequests(retry_after=SECONDS)
        finally:
            self._places.release()

    def give_back(self) -> None:
        """Let the next one have it."""
        self._turn.release()


def register(app: Flask) -> None:
    """Give the application its turns; each is given back when its request is answered."""
    app.extensions["turns"] = Turns()
    app.teardown_appcontext(_give_back)


def take_turn() -> None:
    """Wait until no other large order is worked out, for the rest of this request.

    Errors: as `Turns.take`.
    """
    if "has_turn" not in g:
        current_app.extensions["turns"].take()
        g.has_turn = True


def take_turn_for(order: Order, workshop: Workshop, *, sizes: int = 1) -> None:
    """Take a turn for an order, or for so many sizes of it, unless that is quickly worked out.

    Errors: as `take_turn`, and as `plan_order`.
    """
    if work_of(plan_order(order, workshop), order.quantity) * sizes > LIGHT_PASSES:
        take_turn()


def _give_back(error: BaseException | None) -> None:
    del error
    if g.pop("has_turn", False):
        current_app.extensions["turns"].give_back()
