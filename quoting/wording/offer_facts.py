"""The facts of an offer in words: what is made, when it comes, what goes into it."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.ground.money import round_half_up
from quoting.core.quote.offer import Offer, OfferedYarn
from quoting.core.quote.what_goes_in import ENDS, GoesIn, Ingredient
from quoting.wording.catalogues import sentence
from quoting.wording.offer_extras import extras_words
from quoting.wording.offer_making import making_words
from quoting.wording.paper import SaidFact
from quoting.wording.rounded import rounded_side, rounded_size, rounded_weight, rounded_yarn
from quoting.wording.shapes import shaped_size
from quoting.wording.speech import Speech

_SIZES = {
    (True, False): sentence("about {size}, border included"),
    (True, True): sentence("about {size}, border included; each side to within {within}"),
    (False, False): sentence("about {size}"),
    (False, True): sentence("about {size}; each side to within {within}"),
}
"""By whether there is a border, and whether a tolerance is promised."""

_ACROSS_WITHIN = {
    True: sentence("about {size}, border included; to within {within}"),
    False: sentence("about {size}; to within {within}"),
}
"""The tolerance of what has no width and length, by whether there is a border."""

_GOES_IN = {
    GoesIn.STITCHES: sentence("Stitches"),
    GoesIn.ROWS: sentence("Rows"),
    GoesIn.ROUNDS: sentence("Rounds"),
    GoesIn.MOTIFS: sentence("Motifs"),
    GoesIn.YARN: sentence("Length of yarn"),
    GoesIn.ENDS: sentence("Ends woven in"),
    GoesIn.ENDS_WORKED_OVER: sentence("Ends worked over"),
    GoesIn.ENDS_ENCLOSED: sentence("Ends enclosed in the border"),
    GoesIn.ENDS_FRINGE: sentence("Ends left as a fringe"),
    GoesIn.HOURS: sentence("Work by hand"),
}


def facts_of_making(offer: Offer, speech: Speech) -> Iterator[SaidFact]:
    """Yield what is made: one blanket of several, all of them alike."""
    yield _fact(sentence("Size"), _size(offer, speech), speech)
    if made := making_words(offer, speech):
        yield _fact(sentence("How it is made"), made, speech)
    yield _fact(sentence("Stitch"), _stitch(offer, speech), speech)
    yield _fact(sentence("Weight"), _weight(offer, speech), speech)
    yield _fact(sentence("Yarn"), ", ".join(map(_yarn, offer.yarns)), speech)
    names = ", ".join(colour.name for colour in offer.colours)
    yield SaidFact(name=speech.worded(sentence("Colours")), text=names, colours=offer.colours)
    if offer.border:
        yield _fact(sentence("Border"), ", ".join(_rounds(offer, speech)), speech)
    if offer.extras:
        name = speech.worded(sentence("With it"))
        yield SaidFact(name=name, text=extras_words(offer, speech), of="extras")


def facts_of_days(offer: Offer, speech: Speech) -> Iterator[SaidFact]:
    """Yield by when it comes, whether that is in time, and how long the offer holds."""
    yield _fact(sentence("With you by"), _ready(offer, speech), speech)
    if offer.wanted_by is not None:
        yield _fact(sentence("Wanted by"), _wanted(offer, speech), speech)
    yield _fact(sentence("Valid until"), speech.day(offer.valid_until), speech)


def facts_of_changes(offer: Offer, speech: Speech) -> Iterator[SaidFact]:
    """Yield what the buyer may still change, and until when, where the maker says so."""
    if offer.change_days is not None:
        yield _fact(sentence("May be changed"), _changes(offer, offer.change_days, speech), speech)


def facts_of_work(offer: Offer, speech: Speech) -> Iterator[SaidFact]:
    """Yield what goes into all the blankets, as far as the buyer is told."""
    for ingredient in offer.goes_in:
        yield _fact(_GOES_IN[ingredient.code], _amount(ingredient, speech), speech)


def heading_of_work(offer: Offer, speech: Speech) -> str:
    """Return what stands over what goes into the blankets."""
    return speech.counted(offer.quantity, "What goes into it", "What goes into all {n} blankets")


def _fact(name: str, text: str, speech: Speech) -> SaidFact:
    return SaidFact(name=speech.worded(name), text=text)


def _size(offer: Offer, speech: Speech) -> str:
    bordered = offer.border is None or bool(offer.border)
    within, centre = offer.size_within_cm, offer.centre
    text = _SIZES[bordered, within is not None]
    if within is not None and centre is not None and centre.goes_by_width:
        text = _ACROSS_WITHIN[bordered]
    size = shaped_size(
        offer.width_cm,
        offer.height_cm,
        centre,
        speech,
        plain=rounded_size(offer.width_cm, offer.height_cm, speech),
        side=lambda side_cm: rounded_side(side_cm, speech),
    )
    return speech.worded(text).format(size=size, within=speech.length(within or 0.0))


def _stitch(offer: Offer, speech: Speech) -> str:
    name = speech.stitch_in_full(offer.stitch)
    return f"{name} – {offer.stitch_words}" if offer.stitch_words else name


def _weight(offer: Offer, speech: Speech) -> str:
    weight = rounded_weight(offer.weight_g, speech)
    return speech.counted(offer.quantity, "about {weight}", "about {weight} each", weight=weight)


def _yarn(yarn: OfferedYarn) -> str:
    return f"{yarn.name} ({yarn.fibre})" if yarn.fibre else yarn.name


def _rounds(offer: Offer, speech: Speech) -> Iterator[str]:
    for border in offer.border or ():
        yield speech.counted(
            border.rounds, "{n} round in {colour}", "{n} rounds in {colour}", colour=border.colour
        )


def _changes(offer: Offer, days: int, speech: Speech) -> str:
    if offer.motifs is not None and offer.motifs.mixed:
        return speech.counted(
            days,
            "colours, size and extras, until {n} day after you accept; the price and the day may "
            "change with them",
            "colours, size and extras, until {n} days after you accept; the price and the day may "
            "change with them",
        )
    if offer.motifs is not None:
        return speech.counted(
            days,
            "colours, layouts, size and extras, until {n} day after you accept; the price and the "
            "day may change with them",
            "colours, layouts, size and extras, until {n} days after you accept; the price and the "
            "day may change with them",
        )
    return speech.counted(
        days,
        "colours, stripes, size and extras, until {n} day after you accept; the price and the day "
        "may change with them",
        "colours, stripes, size and extras, until {n} days after you accept; the price and the day "
        "may change with them",
    )


def _ready(offer: Offer, speech: Speech) -> str:
    text = sentence(
        "{ready} if you accept on {day}, and about a day later for each day that you wait"
    )
    return speech.worded(text).format(ready=speech.day(offer.ready_by), day=speech.day(offer.day))


def _wanted(offer: Offer, speech: Speech) -> str:
    assert offer.wanted_by is not None, "asked only where a day is wanted"  # noqa: S101
    day, late = speech.day(offer.wanted_by), (offer.ready_by - offer.wanted_by).days
    if late <= 0:
        return speech.worded(sentence("{day}: it comes in time")).format(day=day)
    return speech.counted(
        late, "{day}: it comes {n} day later", "{day}: it comes {n} days later", day=day
    )


def _amount(ingredient: Ingredient, speech: Speech) -> str:
    match ingredient.code:
        case GoesIn.YARN:
            length = rounded_yarn(float(ingredient.amount), speech)
            return speech.worded(sentence("about {length}")).format(length=length)
        case GoesIn.HOURS:
            hours = max(1, int(round_half_up(ingredient.amount, 0)))
            return speech.counted(hours, "about {n} hour", "about {n} hours")
        case code if code in ENDS.values():
            return speech.worded(sentence("about {count}")).format(
                count=speech.number(ingredient.amount)
            )
        case _:
            return speech.number(ingredient.amount)
