"""What came of figures: for each a range, a mark where it was expected, and a dot where it fell."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from exports.charts.ground import FONT_SIZE, SIDE, SMALL_SIZE, VIEW_WIDTH, framed, words_width
from exports.svg import INK, element, escaped, path, text

PITCH, TOP, FOOT = 20.0, 20.0, 15.0
NAMES = 96.0
"""How much room the names have, at the left."""

RADIUS, HALF_TICK = 4.0, 6.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """One figure: where it was `expected` and fell, the ends of its range, and that in words."""

    name: str
    label: str
    expected: Decimal
    real: Decimal
    low: Decimal | None = None
    high: Decimal | None = None

    @property
    def amounts(self) -> list[Decimal]:
        """All that is drawn of it."""
        return [a for a in (self.expected, self.real, self.low, self.high) if a is not None]

    @property
    def is_outside(self) -> bool:
        """Whether it fell outside its range."""
        low, high = self.low, self.high
        return low is not None and high is not None and not low <= self.real <= high


@dataclass(frozen=True, slots=True)
class _Across:
    """Where amounts lie right of the names, with a little room at either end."""

    least: Decimal
    most: Decimal

    def x(self, amount: Decimal) -> float:
        span = self.most - self.least
        share = float((amount - self.least) / span) if span else 0.5
        return NAMES + RADIUS + share * (VIEW_WIDTH - SIDE - NAMES - 2 * RADIUS)


def dots(
    shown: Sequence[Dot],
    *,
    title: str,
    description: str,
    zero: str,
    say: Callable[[Decimal], str],
    prefix: str,
) -> str:
    """Return a chart of the figures, one under another; `zero` says what nought is.

    `say` says the least and the most that is drawn, at the foot, where they are not nought.
    A dot is filled where it fell within its range, and hollow where outside. `prefix` begins every
    id.
    """
    amounts = [amount for dot in shown for amount in dot.amounts]
    across = _Across(min([*amounts, Decimal(0)]), max([*amounts, Decimal(0)]))
    bottom = TOP + PITCH * len(shown)
    rows = [_row(dot, across, TOP + PITCH * (number + 0.5)) for number, dot in enumerate(shown)]
    return framed(
        *_nought(zero, across, bottom),
        *rows,
        *_ends(across, bottom, say),
        bottom=bottom + FOOT,
        title=title,
        description=description,
        prefix=prefix,
    )


def _nought(zero: str, across: _Across, bottom: float) -> Iterator[str]:
    at, half = across.x(Decimal(0)), words_width(zero, SMALL_SIZE) / 2
    x = min(max(at, NAMES + half), VIEW_WIDTH - SIDE - half)
    yield text(zero, x, FONT_SIZE, text_anchor="middle", font_size=SMALL_SIZE, fill=INK)
    yield path("M", at, TOP - 4, "V", bottom, class_="zero", stroke=INK, stroke_dasharray="2 3")


def _ends(across: _Across, bottom: float, say: Callable[[Decimal], str]) -> Iterator[str]:
    """Yield the words of the scale's ends, each with a stroke under the lowest row."""
    for amount, anchor in ((across.least, "start"), (across.most, "end")):
        if amount:
            x = across.x(amount)
            yield path("M", x, bottom - 2, "V", bottom + 4, stroke=INK, stroke_width=1)
            yield text(
                say(amount), x, bottom + FOOT, text_anchor=anchor, font_size=SMALL_SIZE, fill=INK
            )


def _row(dot: Dot, across: _Across, y: float) -> str:
    said = element("title", escaped(f"{dot.name}: {dot.label}"))
    name = text(dot.name, SIDE, y + 4, font_size=FONT_SIZE, fill=INK)
    return element("g", said, name, *_marks(dot, across, y), class_="dot-row")


def _marks(dot: Dot, across: _Across, y: float) -> Iterator[str]:
    if dot.low is not None and dot.high is not None:
        low, high = across.x(dot.low), across.x(dot.high)
        yield path("M", low, y, "H", high, class_="range", stroke=INK, stroke_width=1)
        yield _tick(low, y, HALF_TICK / 2)
        yield _tick(high, y, HALF_TICK / 2)
    yield _tick(across.x(dot.expected), y, HALF_TICK)
    yield element(
        "circle",
        class_="real",
        cx=across.x(dot.real),
        cy=y,
        r=RADIUS,
        stroke=INK,
        stroke_width=1.4,
        fill="none" if dot.is_outside else INK,
    )


def _tick(x: float, y: float, half: float) -> str:
    return path("M", x, y - half, "V", y + half, stroke=INK, stroke_width=1.4)
