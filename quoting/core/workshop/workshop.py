"""The workshop: everything the maker has measured or decided, whatever the order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.measures import Units
from quoting.core.ground.money import round_money
from quoting.core.ground.place import Place, at
from quoting.core.workshop.calendar import HOURS_A_WEEK, LEAST_HOURS, WorkingCalendar
from quoting.core.workshop.documents import Documents
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.own_words import OwnWords, WordsIn
from quoting.core.workshop.ranges import Ranges
from quoting.core.workshop.selling import Delivery, Fee, Pay, Pricing, Tax
from quoting.core.workshop.stitches import (
    TURNING_CHAIN_COUNTS,
    TURNING_CHAINS,
    WORKED,
    Stitch,
    TurningChain,
    Vocabulary,
)
from quoting.core.workshop.swatches import Swatch
from quoting.core.workshop.timings import Minutes, Timing
from quoting.core.workshop.yarns import Yarn, yarn_named

MOST_FOR_BUYERS = 120
"""Characters of what a pattern is like in a buyer's words: they stand on one line of a quote."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pattern:
    """A stitch pattern of the maker's own, `like` a basic stitch for pace and border.

    How it turns is its own: `turning_chains` and whether they count as a stitch; and the
    `foundation_chains` that it begins with besides a chain for each stitch. `row_repeat` is the
    rows after which it begins anew. `for_buyers` says how it looks and feels.
    """

    name: str
    like: Stitch
    multiple: int = 1
    plus: int = 0
    turning_chains: int | None = None
    counts_turning_chain: bool | None = None
    foundation_chains: int | None = None
    row_repeat: int = 1
    for_buyers: str = ""

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("name", self.name)
        if self.name in set(Stitch):
            checks.add("name", MistakeCode.BASIC_STITCH_NAME, read=self.name)
        if self.like not in WORKED:
            checks.add("like", MistakeCode.UNKNOWN_STITCH, read=self.like, known=tuple(WORKED))
        checks.number("multiple", self.multiple, least=1, most=10_000)
        checks.number("plus", self.plus, least=0, most=10_000)
        checks.number("turning_chains", self.turning_chains, least=0, most=20)
        checks.number("foundation_chains", self.foundation_chains, least=0, most=100)
        checks.number("row_repeat", self.row_repeat, least=1, most=10_000)
        checks.text("for_buyers", self.for_buyers, most=MOST_FOR_BUYERS)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Workshop:
    """One maker's workshop. Places in its refusals are those of the workshop file."""

    name: str
    locale: str
    currency: str
    yarns: tuple[Yarn, ...]
    timings: tuple[Timing, ...]
    pay: Pay
    pricing: Pricing
    hours_per_week: float
    units: Units = Units.METRIC
    speaks: Vocabulary = Vocabulary.US
    own_words: OwnWords = field(default_factory=OwnWords)
    words_in: tuple[WordsIn, ...] = ()
    documents: Documents = field(default_factory=Documents)
    habits: Habits = field(default_factory=Habits)
    patterns: tuple[Pattern, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    motifs: tuple[Motif, ...] = ()
    minutes: Minutes = field(default_factory=Minutes)
    fees: tuple[Fee, ...] = ()
    tax: Tax = field(default_factory=Tax)
    delivery: Delivery = field(default_factory=Delivery)
    calendar: WorkingCalendar = field(default_factory=WorkingCalendar)
    ranges: Ranges = field(default_factory=Ranges)
    exchange: Mapping[str, ExchangeRate] = field(default_factory=lambda: MappingProxyType({}))

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name(at("workshop", "name"), self.name)
        hours = self.hours_per_week
        checks.number(
            at("workshop", "hours_per_week"), hours, above=0, least=LEAST_HOURS, most=HOURS_A_WEEK
        )
        for code, place in self._currencies():
            if code not in MINOR_DIGITS:
                checks.add(place, MistakeCode.UNKNOWN_CURRENCY, read=code)
        if self.currency in self.exchange:
            checks.add(f"exchange.{self.currency}", MistakeCode.OWN_CURRENCY, read=self.currency)
        if not self.yarns:
            checks.add("yarns", MistakeCode.MISSING)
        checks.unique(
            lambda number: at("yarns", number, "name"), [yarn.name for yarn in self.yarns]
        )
        checks.unique(
            lambda number: at("patterns", number, "name"),
            [pattern.name for pattern in self.patterns],
        )
        checks.unique(
            lambda number: at("words_in", number, "language"),
            [words.language for words in self.words_in],
        )
        self._check_measurements(checks)
        self._check_motifs(checks)
        self._check_step(checks)
        checks.done()

    def _currencies(self) -> list[tuple[str, Place]]:
        return [(self.currency, at("workshop", "currency"))] + [
            (code, at("exchange", code)) for code in self.exchange
        ]

    def _check_measurements(self, checks: Checks) -> None:
        if not self.timings:
            checks.add("timings", MistakeCode.MISSING)
        yarns = {None, *(yarn.name for yarn in self.yarns)}
        for number, timing in enumerate(self.timings, 1):
            with checks.under(at("timings", number)):
                self.basic_stitch(timing.stitch, "stitch")
            with checks.under(at("timings", number)):
                if timing.yarn not in yarns:
                    yarn_named(self.yarns, timing.yarn or "", "yarn")
        for number, swatch in enumerate(self.swatches, 1):
            with checks.under(at("swatches", number)):
                self.basic_stitch(swatch.stitch, "stitch")
            with checks.under(at("swatches", number)):
                yarn_named(self.yarns, swatch.yarn, "yarn")

    def _check_motifs(self, checks: Checks) -> None:
        """Check that motifs can be told from stitches, and are of a yarn and stitch there is."""
        patterns = {pattern.name for pattern in self.patterns}
        checks.unique(
            lambda number: at("motifs", number, "name"), [motif.name for motif in self.motifs]
        )
        for number, motif in enumerate(self.motifs, 1):
            if motif.name in patterns or motif.name in set(Stitch):
                place = at("motifs", number, "name")
                checks.add(place, MistakeCode.NAME_OF_A_STITCH, read=motif.name)
            with checks.under(at("motifs", number)):
                self.basic_stitch(motif.stitch, "stitch")
            with checks.under(at("motifs", number)):
                yarn_named(self.yarns, motif.yarn, "yarn")

    def _check_step(self, checks: Checks) -> None:
        step = self.pricing.round_up_to
        if step is not None and self.currency in MINOR_DIGITS:
            whole = round_money(step, self.currency)
            if whole != step:
                checks.add(
                    at("price", "round_up_to"),
                    MistakeCode.NOT_WHOLE_MINOR_UNITS,
                    read=step,
                    currency=self.currency,
                )

    def pattern(self, name: str) -> Pattern | None:
        """Return the workshop's pattern of that name, if it has one."""
        return next((pattern for pattern in self.patterns if pattern.name == name), None)

    def stitch_repeat(self, name: str) -> tuple[int, int]:
        """Return the multiple that the stitches of a row come in, and how many more there are."""
        pattern = self.pattern(name)
        return (pattern.multiple, pattern.plus) if pattern is not None else (1, 0)

    def row_repeat(self, name: str) -> int:
        """Return the rows after which a stitch or pattern begins anew."""
        pattern = self.pattern(name)
        return pattern.row_repeat if pattern is not None else 1

    def basic_stitch(self, name: str, place: Place | str) -> Stitch:
        """Return the basic stitch that `name` is, or that the pattern of that name is like.

        Errors: `unknown-stitch` at `place`, with the names there are.
        """
        pattern = self.pattern(name)
        if pattern is not None:
            return pattern.like
        if name in WORKED:
            return Stitch(name)
        known = tuple(s.value for s in WORKED) + tuple(p.name for p in self.patterns)
        raise refuse(place, MistakeCode.UNKNOWN_STITCH, read=name, known=known)

    def turning_chain(self, name: str) -> TurningChain:
        """Return how a row of this stitch is turned, and begun from its foundation.

        A pattern's turning chain that is shorter than that of the stitch it is like stands for
        no stitch, unless the pattern says that it does.
        """
        kind = self.basic_stitch(name, "stitch")
        usual = TURNING_CHAINS[kind]
        counts = self.habits.counts_turning_chain.get(kind, TURNING_CHAIN_COUNTS[kind])
        pattern = self.pattern(name)
        if pattern is None:
            return TurningChain(usual, counts)
        chains = usual if pattern.turning_chains is None else pattern.turning_chains
        if pattern.counts_turning_chain is not None:
            counts = pattern.counts_turning_chain
        elif chains < usual:
            counts = False
        return TurningChain(chains, counts and chains > 0, pattern.foundation_chains)

    def yarn(self, name: str, place: Place | str = "yarn") -> Yarn:
        """Return the yarn of that name; errors as `yarn_named`."""
        return yarn_named(self.yarns, name, place)

    def motif(self, name: str, place: Place | str = "motif") -> Motif:
        """Return the motif of that name. Errors: `unknown-motif`, with the names there are."""
        for motif in self.motifs:
            if motif.name == name:
                return motif
        known = tuple(motif.name for motif in self.motifs)
        raise refuse(place, MistakeCode.UNKNOWN_MOTIF, read=name, known=known)
