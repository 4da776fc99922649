"""Charts of a comparison in ink: bars, and bars stacked by what a price pays for.

The figures stand in a table beside them, as beside every picture.
"""

from __future__ import annotations

from exports.charts.dots import Dot, dots
from exports.charts.plain import bars
from exports.charts.price_bar import price_bar
from exports.charts.stacked import stacked_bars
from exports.charts.values import Bar, Level, Part, StackedBar
from exports.charts.weeks import weeks_chart

__all__ = [
    "Bar",
    "Dot",
    "Level",
    "Part",
    "StackedBar",
    "bars",
    "dots",
    "price_bar",
    "stacked_bars",
    "weeks_chart",
]
