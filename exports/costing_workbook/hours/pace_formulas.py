"""A pace as formulas: how far off so many may be, and in what words a range is promised."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from exports.costing_workbook.hours.hour_assumptions_block import HourAssumptions
from exports.sheets.cells import Formula, Ref
from quoting.core.estimate.hours import Hours
from quoting.core.plan.gauge import Sureness
from quoting.wording import sureness_words

PROMISED, ROUGHLY = "19 times in 20", "roughly"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceCells:
    """The cells of one pace, as `Pace` has it; `t` is Student's, `counted` all that was timed."""

    each: Ref | str
    counted: Ref
    sessions: Ref
    scatter: Ref
    t: Ref

    def half_width(self, count: str, taken: HourAssumptions) -> str:
        """Return the half-width of the minutes of `count`, as `Pace.predict` has it."""
        widest = f"N({taken.limits})*{count}*{self.each}"
        spread = f"{self.t}*{self.scatter}*SQRT({count}+{count}^2/{self.counted})"
        few = f"IF({self.sessions}<N({taken.few}),MIN({spread},{widest}),{spread})"
        return f"IF({self.sessions}<2,{widest},{few})"


def student_t(sessions: str, taken: HourAssumptions) -> str:
    """Return Student's t of so many sessions, two-sided; 0 where there is none."""
    sure = f"N({taken.confidence})"
    return f"IF(AND({sessions}>1,{sure}>0,{sure}<1),TINV(1-{sure},{sessions}-1),0)"


def sureness_of(sessions: str) -> str:
    """Return what rests on so many sessions, in a word, as `Pace.sureness` has it."""
    several, once = map(sureness_words, (Sureness.MEASURED, Sureness.ONE_TIMING))
    return f'IF({sessions}>1,"{several}","{once}")'


def promise(
    before: str, after: str, hours: Hours, sessions: Iterable[Ref], taken: HourAssumptions
) -> Formula:
    """Return how surely the range of hours holds, between other words."""
    sure = how_sure(hours, sessions, taken)
    return Formula(f'"{before}"&{sure.expression}&"{after}"', f"{before}{sure.value}{after}")


def how_sure(hours: Hours, sessions: Iterable[Ref], taken: HourAssumptions) -> Formula:
    """Return how surely the range of hours holds: so often, or roughly."""
    asked = f"N({taken.confidence})"
    often = f'IF(ROUND({asked}-0.95,9)=0,"{PROMISED}",ROUND(100*{asked},2)&" times in 100")'
    enough = ",".join(f"{count}>=N({taken.few})" for count in sessions) or "TRUE"
    expression = f'IF(AND({enough}),{often},"{ROUGHLY}")'
    return Formula(expression, PROMISED if hours.timed_enough else ROUGHLY)
