"""What the form's lists offer: yarns, colours, stitches, currencies."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wtforms import Form

from quoting.core.ground.money import round_half_up
from quoting.core.workshop.motifs import Motif
from quoting.core.workshop.rounds import SQUARES, Counting
from quoting.core.workshop.stitches import WORKED
from quoting.core.workshop.workshop import Workshop
from quoting.web.forms.lines import entries_of, part_of, typed_of
from quoting.web.orders.other_yarns import other_colours
from quoting.web.shop import Shop
from quoting.wording import Speech, language_names

MOST_OTHERS = 20_000
"""Colours of other yarns that all the lines of a form together may offer."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """One thing to choose: its value, what it is called, and its colour code, if it has one."""

    value: str
    label: str
    code: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offers:
    """Everything that the form's lists offer; `motifs` are by the shape that they have."""

    yarns: tuple[Offer, ...]
    motifs: Mapping[str, tuple[Offer, ...]]
    stitches: tuple[Offer, ...]
    colours: tuple[Offer, ...]
    other_yarns: Mapping[str, tuple[Offer, ...]]
    every_colour: tuple[Offer, ...]
    currencies: tuple[Offer, ...]
    countries: tuple[str, ...]
    languages: tuple[Offer, ...]

    @property
    def square_motifs(self) -> tuple[Offer, ...]:
        """The motifs that can be joined in columns and rows."""
        return tuple(offer for shape in SQUARES for offer in self.motifs[shape])

    @property
    def colour_names(self) -> list[str]:
        """The names of the colours of the design."""
        return [offer.value for offer in self.colours]


def offers_of(form: Form, shop: Shop) -> Offers:
    """Return what a form's lists offer; the colours are those of the yarn that it names."""
    workshop = shop.workshop
    money = (workshop.currency, *workshop.exchange)
    every = {name: code for yarn in workshop.yarns for name, code in yarn.colours.items()}
    return Offers(
        yarns=tuple(Offer(value=yarn.name, label=yarn.name) for yarn in workshop.yarns),
        motifs=_motifs(workshop, shop.speech),
        stitches=_stitches(workshop, shop.speech),
        colours=_colours(form, workshop),
        other_yarns=_other_yarns(form, workshop),
        every_colour=tuple(Offer(value=n, label=n, code=c) for n, c in every.items()),
        currencies=tuple(Offer(value=code, label=code) for code in money),
        countries=tuple(dict.fromkeys(band.to for band in workshop.delivery.bands)),
        languages=offered_languages(typed_of(part_of(form, "order"), "language").typed),
    )


def offered_languages(*typed: str) -> tuple[Offer, ...]:
    """Return the languages of a quote by their own names, those that were typed among them."""
    return tuple(Offer(value=code, label=name) for code, name in language_names(*typed))


def basic_stitches(speech: Speech) -> tuple[Offer, ...]:
    """Return the stitches that every workshop has, by the names that it speaks of them."""
    return tuple(
        Offer(value=stitch, label=f"{speech.stitch(stitch)}, {speech.stitch_in_full(stitch)}")
        for stitch in WORKED
    )


def _motifs(workshop: Workshop, say: Speech) -> Mapping[str, tuple[Offer, ...]]:
    offers = {shape.value: tuple[Offer, ...]() for shape in Counting}
    for motif in workshop.motifs:
        offers[motif.counting] += (Offer(value=motif.name, label=motif_words(motif, say)),)
    return offers


def motif_words(motif: Motif, say: Speech) -> str:
    """Return what a motif is: `sun: 5 rounds, 15 cm, 12 g`."""
    weighed = motif.weighed
    yarn = (
        say.yarn_length(sum(motif.rounds_m))
        if weighed is None
        else say.weight(round_half_up(weighed.weight_g / weighed.motifs, 1))
    )
    return f"{motif.name}: {say.count(motif.rounds, 'round')}, {say.length(motif.side_cm)}, {yarn}"


def _stitches(workshop: Workshop, speech: Speech) -> tuple[Offer, ...]:
    patterns = [Offer(value=p.name, label=p.name) for p in workshop.patterns]
    return (*basic_stitches(speech), *patterns)


def _other_yarns(form: Form, workshop: Workshop) -> Mapping[str, tuple[Offer, ...]]:
    """Return the colours of the yarns that the blanket is not in, where the page has room."""
    blanket = part_of(form, "blanket")
    taken = {typed_of(line, "name").typed.strip() for line in entries_of(blanket, "colours")}
    groups: dict[str, tuple[Offer, ...]] = {}
    others = list(other_colours(workshop, typed_of(blanket, "yarn").typed))
    if len(others) * sum(map(len, form.meta.lines.values())) > MOST_OTHERS:
        return groups
    for other in others:
        if other.name not in taken:
            code = workshop.yarn(other.yarn).colours[other.colour]
            offer = Offer(value=other.name, label=other.colour, code=code)
            groups[other.yarn] = (*groups.get(other.yarn, ()), offer)
    return groups


def _colours(form: Form, workshop: Workshop) -> tuple[Offer, ...]:
    blanket = part_of(form, "blanket")
    yarns = {yarn.name: yarn for yarn in workshop.yarns}
    chosen = yarns.get(typed_of(blanket, "yarn").typed)
    codes = dict(chosen.colours) if chosen is not None else {}
    for line in entries_of(blanket, "colours"):
        other = yarns.get(typed_of(line, "yarn").typed)
        name, colour = typed_of(line, "name").typed.strip(), typed_of(line, "colour").typed
        if name and other is not None and colour in other.colours:
            codes[name] = other.colours[colour]
    return tuple(Offer(value=name, label=name, code=code) for name, code in codes.items())
