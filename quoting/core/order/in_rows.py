"""A body worked in rows, as it is asked for: sections of stripes from the bottom up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import ClassVar

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.place import Place, at

MAX_COUNT = 10_000
MAX_STRIPES = 500
MAX_SECTIONS = 20


class StopAt(StrEnum):
    """Where the last section may end: at a whole repeat, a whole stripe, or any row."""

    REPEAT = "repeat"
    STRIPE = "stripe"
    ROW = "row"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stripe:
    """So many rows of one colour, perhaps in a stitch of their own."""

    colour: str
    rows: int = 1
    stitch: str | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("colour", self.colour)
        checks.number("rows", self.rows, least=1, most=MAX_COUNT)
        if self.stitch is not None:
            checks.name("stitch", self.stitch)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """Stripes that repeat, over a `share` of the height or an exact number of `repeats`.

    `fitted` ones are worked once each instead, and their rows are what they have of that share in
    proportion to one another.
    """

    stripes: tuple[Stripe, ...]
    share: float | None = None
    repeats: int | None = None
    fitted: bool = False

    def __post_init__(self) -> None:
        checks = Checks()
        if not self.stripes:
            checks.add("stripes", MistakeCode.MISSING)
        if len(self.stripes) > MAX_STRIPES:
            checks.add("stripes", MistakeCode.TOO_MANY, read=len(self.stripes), limit=MAX_STRIPES)
        if self.share is not None and self.repeats is not None:
            checks.add("repeats", MistakeCode.SHARE_AND_REPEATS)
        if self.fitted and self.repeats is not None:
            checks.add("repeats", MistakeCode.FITTED_AND_REPEATS)
        checks.number("share", self.share, least=0, most=1_000_000)
        checks.number("repeats", self.repeats, least=1, most=MAX_COUNT)
        checks.done()

    @property
    def weight(self) -> float:
        """The section's share of the height; one, where neither share nor repeats is given."""
        return 1.0 if self.share is None else self.share

    @property
    def is_open(self) -> bool:
        """Whether as many repeats are worked as fill its share."""
        return self.repeats is None and not self.fitted

    @property
    def rows(self) -> int:
        """The rows of one repeat."""
        return sum(stripe.rows for stripe in self.stripes)

    def as_share(self) -> Section:
        """Return the section with its exact repeats as a share in proportion to its rows."""
        return replace(self, share=float(self.rows * (self.repeats or 0)), repeats=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class InRows:
    """A body worked in rows, back and forth: how it is striped, and the maker's own counts.

    `stitches`, `multiple` and `plus` are the maker's own and win over what the size and the
    pattern would give.
    """

    sections: tuple[Section, ...]
    first_rows: tuple[Stripe, ...] = ()
    last_rows: tuple[Stripe, ...] = ()
    stitches: int | None = None
    multiple: int | None = None
    plus: int | None = None
    stop_at: StopAt = StopAt.REPEAT
    also_worked: ClassVar[tuple[str, ...]] = ()
    goes_by_width: ClassVar[bool] = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("stitches", self.stitches, least=1, most=MAX_COUNT)
        checks.number("multiple", self.multiple, least=1, most=MAX_COUNT)
        checks.number("plus", self.plus, least=0, most=MAX_COUNT)
        for place in ("first_rows", "last_rows"):
            if len(stripes := getattr(self, place)) > MAX_STRIPES:
                checks.add(place, MistakeCode.TOO_MANY, read=len(stripes), limit=MAX_STRIPES)
        self._check_sections(checks)
        checks.done()

    def _check_sections(self, checks: Checks) -> None:
        if not self.sections:
            checks.add("sections", MistakeCode.MISSING)
        if len(self.sections) > MAX_SECTIONS:
            checks.add(
                "sections", MistakeCode.TOO_MANY, read=len(self.sections), limit=MAX_SECTIONS
            )
        shares = [section.weight for section in self.sections if section.repeats is None]
        if shares and sum(shares) <= 0:
            checks.add("sections", MistakeCode.NO_SHARES)

    def stripes_with_places(self) -> Iterator[tuple[Place, Stripe]]:
        """Yield every stripe with its place in the order file."""
        for number, stripe in enumerate(self.first_rows, 1):
            yield at("blanket", "first_rows", number), stripe
        for number, section in enumerate(self.sections, 1):
            for line, stripe in enumerate(section.stripes, 1):
                yield at("blanket", "sections", number, "stripes", line), stripe
        for number, stripe in enumerate(self.last_rows, 1):
            yield at("blanket", "last_rows", number), stripe

    def colours_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield every colour that is named, with its place in the order file."""
        return ((place / "colour", stripe.colour) for place, stripe in self.stripes_with_places())

    def stitches_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield every stitch that is named beside the blanket's own, with its place."""
        for place, stripe in self.stripes_with_places():
            if stripe.stitch is not None:
                yield place / "stitch", stripe.stitch

    def motifs_with_places(self) -> Iterator[tuple[Place, str]]:
        """Yield nothing: rows have no motif."""
        return iter(())

    @property
    def main_colours(self) -> tuple[str, ...]:
        """The colours that it is striped in, each once: of them one could be done without."""
        stripes = (stripe.colour for section in self.sections for stripe in section.stripes)
        return tuple(dict.fromkeys(stripes))

    def recoloured(self, colour: str, other: str) -> InRows:
        """Return it with one colour's stripes and rows worked in another."""

        def dye(stripes: tuple[Stripe, ...]) -> tuple[Stripe, ...]:
            return tuple(replace(s, colour=other) if s.colour == colour else s for s in stripes)

        return replace(
            self,
            sections=tuple(replace(part, stripes=dye(part.stripes)) for part in self.sections),
            first_rows=dye(self.first_rows),
            last_rows=dye(self.last_rows),
        )

    def resized(self) -> InRows:
        """Return it without what belongs to one size.

        The maker's own stitch count is dropped; where every section has an exact number of
        repeats, they become shares in the same proportion.
        """
        exact = all(section.repeats is not None for section in self.sections)
        sections = tuple(section.as_share() for section in self.sections)
        return replace(self, stitches=None, sections=sections if exact else self.sections)
