"""What the demo's book has written down is as a maker would write it."""

from __future__ import annotations

from datetime import date

from quoting.cli.demo_log import SITTINGS, demo_log
from quoting.core.making.log_lines import Doing, Session
from quoting.core.order.stage import Stage
from quoting.core.quote.quote import quote_order
from quoting.places import demo_centre, demo_workshop
from quoting.schema import load_order, load_workshop

DAY = date(2026, 11, 24)


def test_rounds_further_out_take_longer_in_the_demo_too() -> None:
    workshop = load_workshop(demo_workshop())
    quote = quote_order(load_order(demo_centre(), workshop), workshop, today=DAY)
    minutes = [
        line.minutes
        for line in demo_log(quote, Stage.FINISHED, DAY)
        if isinstance(line, Session) and line.doing is Doing.AT_THE_HOOK
    ]
    assert len(minutes) == len(SITTINGS)
    assert minutes == sorted(minutes)
    assert minutes[-1] > 5 * minutes[0]
