"""The blanket as the buyer asks for it: size, stitch, stripes, border."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from types import MappingProxyType

from quoting.core.errors import Checks
from quoting.core.place import Place, at

Kind = tuple[str, str]
"""A yarn and a stitch that is worked in it."""

MAX_SIDE_CM = 1000.0
MAX_COUNT = 10_000
MAX_STRIPES = 500
MAX_SECTIONS = 20
MAX_ROUNDS = 100


class StopAt(StrEnum):
    """Where the last section may end: at a whole repeat, a whole stripe, or any row."""

    REPEAT = "repeat"
    STRIPE = "stripe"
    ROW = "row"


class Corner(StrEnum):
    """What a border's first round does at each corner."""

    CHAIN = "chain"
    ONE_EXTRA = "one extra"
    THREE_IN_ONE = "three in one"


class Construction(StrEnum):
    """How the body grows."""

    ROWS = "rows"


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
    """Stripes that repeat, over a `share` of the height or an exact number of `repeats`."""

    stripes: tuple[Stripe, ...]
    share: float | None = None
    repeats: int | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        if not self.stripes:
            checks.add("stripes", "missing")
        if len(self.stripes) > MAX_STRIPES:
            checks.add("stripes", "too-many", read=len(self.stripes), limit=MAX_STRIPES)
        if self.share is not None and self.repeats is not None:
            checks.add("repeats", "share-and-repeats")
        checks.number("share", self.share, least=0, most=1_000_000)
        checks.number("repeats", self.repeats, least=1, most=MAX_COUNT)
        checks.done()

    @property
    def weight(self) -> float:
        """The section's share of the height; one, where neither share nor repeats is given."""
        return 1.0 if self.share is None else self.share


@dataclass(frozen=True, slots=True, kw_only=True)
class BorderBand:
    """Border rounds of one stitch and colour.

    `row_end_ratio` is the maker's own count of stitches per row end, for the first round only.
    """

    stitch: str
    colour: str
    rounds: int = 1
    row_end_ratio: float | None = None
    corner: Corner = Corner.CHAIN

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("stitch", self.stitch)
        checks.name("colour", self.colour)
        checks.number("rounds", self.rounds, least=1, most=MAX_ROUNDS)
        checks.number("row_end_ratio", self.row_end_ratio, above=0, most=100)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class ColourSource:
    """Where a colour of the design comes from: a yarn of the workshop and its colour."""

    yarn: str
    colour: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Design:
    """A blanket: finished size with its border, and how it is striped.

    `stitches`, `multiple` and `plus` are the maker's own and win over what the size and the
    pattern would give.
    """

    width_cm: float
    height_cm: float
    stitch: str
    yarn: str
    sections: tuple[Section, ...]
    first_rows: tuple[Stripe, ...] = ()
    last_rows: tuple[Stripe, ...] = ()
    border: tuple[BorderBand, ...] = ()
    colours: Mapping[str, ColourSource] = field(default_factory=lambda: MappingProxyType({}))
    stitches: int | None = None
    multiple: int | None = None
    plus: int | None = None
    stop_at: StopAt = StopAt.REPEAT
    mix_lots: bool = False
    construction: Construction = Construction.ROWS

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("width", self.width_cm, above=0, most=MAX_SIDE_CM)
        checks.number("height", self.height_cm, above=0, most=MAX_SIDE_CM)
        checks.name("stitch", self.stitch)
        checks.name("yarn", self.yarn)
        checks.number("stitches", self.stitches, least=1, most=MAX_COUNT)
        checks.number("multiple", self.multiple, least=1, most=MAX_COUNT)
        checks.number("plus", self.plus, least=0, most=MAX_COUNT)
        for place in ("first_rows", "last_rows"):
            if len(stripes := getattr(self, place)) > MAX_STRIPES:
                checks.add(place, "too-many", read=len(stripes), limit=MAX_STRIPES)
        self._check_sections(checks)
        checks.done()

    def _check_sections(self, checks: Checks) -> None:
        if not self.sections:
            checks.add("sections", "missing")
        if len(self.sections) > MAX_SECTIONS:
            checks.add("sections", "too-many", read=len(self.sections), limit=MAX_SECTIONS)
        shares = [section.weight for section in self.sections if section.repeats is None]
        if shares and sum(shares) <= 0:
            checks.add("sections", "no-shares")

    def source_of(self, colour: str) -> ColourSource:
        """Return the yarn and colour that a colour of the design comes from."""
        return self.colours.get(colour) or ColourSource(yarn=self.yarn, colour=colour)

    @property
    def kind(self) -> Kind:
        """The blanket's own yarn and stitch."""
        return self.yarn, self.stitch

    def kind_of(self, part: Stripe | BorderBand) -> Kind:
        """Return the yarn and the stitch that a stripe or a border is worked in."""
        return self.source_of(part.colour).yarn, part.stitch or self.stitch


def first_names(design: Design, names: Iterable[str]) -> dict[str, str]:
    """Return each name of a colour with the first of those that come from one yarn's colour."""
    first: dict[ColourSource, str] = {}
    return {name: first.setdefault(design.source_of(name), name) for name in dict.fromkeys(names)}


def stripes_with_places(design: Design) -> Iterator[tuple[Place, Stripe]]:
    """Yield every stripe of the design with its place in the order file."""
    for number, stripe in enumerate(design.first_rows, 1):
        yield at("blanket", "first_rows", number), stripe
    for number, section in enumerate(design.sections, 1):
        for line, stripe in enumerate(section.stripes, 1):
            yield at("blanket", "sections", number, "stripes", line), stripe
    for number, stripe in enumerate(design.last_rows, 1):
        yield at("blanket", "last_rows", number), stripe
