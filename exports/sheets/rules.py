"""What an input takes: as a spreadsheet program refuses it, and as a formula finds it afterwards.

A program checks only what is typed: a cell that is emptied, filled or pasted over passes. So every
rule is written twice, as a data validation (ECMA-376, part 1, 18.3.1.32) and as a condition.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from openpyxl.worksheet.datavalidation import DataValidation

_Operator = Literal["between", "greaterThan", "greaterThanOrEqual", "lessThanOrEqual"]

LONGEST = 200
"""Characters of a name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What may stand in an input. `wanted` completes a sentence such as *wanted: an amount*.

    Numbers are from `least` to `most`, where these are given; `name` tells an input from others of
    its line.
    """

    kind: Literal["decimal", "whole", "list", "textLength"]
    wanted: str
    least: float | None = None
    most: float | None = None
    over: bool = False
    choices: tuple[str, ...] = ()
    empty: bool = False
    name: str = ""

    def called(self, name: str) -> Rule:
        """Return the rule of an input that has this name in its line."""
        return replace(self, name=name)

    def or_empty(self) -> Rule:
        """Return the rule of an input that may be left empty."""
        return replace(self, empty=True)

    @property
    def said(self) -> str:
        """What is wanted, as it is said beside an input that breaks the rule."""
        return f"{self.name}: {self.wanted}" if self.name else self.wanted

    def broken(self, at: str) -> str:
        """Return the condition that a cell breaks the rule."""
        condition = self._broken(at)
        return f'IF({at}="",FALSE,{condition})' if self.empty else condition

    def _broken(self, at: str) -> str:
        if self.kind == "list":
            return "AND(" + ",".join(f'{at}<>"{word}"' for word in self.choices) + ")"
        if self.kind == "textLength":
            return f"LEN({at})>{LONGEST}"
        outside = []
        if self.least is not None:
            outside.append(f"{at}{'<=' if self.over else '<'}{self.least:g}")
        if self.most is not None:
            outside.append(f"{at}>{self.most:g}")
        if self.kind == "whole":
            outside.append(f"{at}<>INT({at})")
        return f"IF(ISNUMBER({at}),OR({','.join(outside)}),TRUE)"

    def validation(self) -> DataValidation:
        """Return the check that a spreadsheet program makes of what is typed, with its message."""
        return DataValidation(
            type=self.kind,
            operator=self._operator,
            formula1=self._first,
            formula2=self._second,
            allow_blank=self.empty,
            showErrorMessage=True,
            errorStyle="stop",
            errorTitle="This cannot stand here",
            error=f"Wanted: {self.wanted}.",
        )

    @property
    def _operator(self) -> _Operator | None:
        if self.kind == "list":
            return None
        if self.kind == "textLength":
            return "lessThanOrEqual"
        if self.most is not None:
            return "between"
        return "greaterThan" if self.over else "greaterThanOrEqual"

    @property
    def _first(self) -> str:
        if self.kind == "list":
            return f'"{",".join(self.choices)}"'
        return f"{LONGEST if self.kind == 'textLength' else self.least or 0:g}"

    @property
    def _second(self) -> str | None:
        return None if self.most is None else f"{self.most:g}"


SHARE = Rule(kind="decimal", wanted="a share from 0% to 100%, such as 20% or 0.2", least=0, most=1)
AMOUNT = Rule(kind="decimal", wanted="an amount, not below 0", least=0)
MEASURE = Rule(kind="decimal", wanted="a number, not below 0", least=0)
FACTOR = Rule(kind="decimal", wanted="a number from 1 to 50", least=1, most=50)
SOME = Rule(kind="decimal", wanted="a number above 0", least=0, over=True)
COUNT = Rule(kind="whole", wanted="a whole number, not below 0", least=0)
SOME_WHOLE = Rule(kind="whole", wanted="a whole number from 1", least=1)
NAME = Rule(kind="textLength", wanted=f"a name of at most {LONGEST} letters", empty=True)


def share_like(share: float, most: float = 1) -> Rule:
    """Return the rule of a share from nothing to `most`, wider where the one that stands is."""
    least, most = min(0.0, share), max(most, share)
    if (least, most) == (0, 1):
        return SHARE
    wanted = f"a share from {least:.4g} to {most:.4g}, such as 20% or 0.2"
    return Rule(kind="decimal", wanted=wanted, least=least, most=most)


def one_of(*choices: str) -> Rule:
    """Return the rule of an input that takes one of a few words of ours."""
    return Rule(kind="list", wanted="one of " + ", ".join(choices), choices=choices)
