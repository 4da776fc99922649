"""The form that a maker fills in with the hook in her other hand: all of a sitting at once."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime

from werkzeug.datastructures import MultiDict
from wtforms import Field, Form

from quoting.core.ground.errors import Mistake, Refused
from quoting.core.ground.place import Document, Place, at, placed
from quoting.core.making.log_lines import Doing, LogLine, Session, YarnUsed
from quoting.core.making.progress import rows_done
from quoting.core.making.sitting import Sitting, sitting_lines
from quoting.notation import MASS, read_measure
from quoting.schema.figures import NUMBER
from quoting.schema.instant import YEARS
from quoting.schema.reading import read_value
from quoting.schema.sitting_shape import SITTING
from quoting.schema.words import DAY
from quoting.web.beside import label_of, say_beside
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of, line_numbers, sent_as
from quoting.web.making.at_hand import AtHand
from quoting.web.orders.order_answer import Said
from quoting.web.shop import Shop

ROW_FIELDS = frozenset({"first_row", "last_row", "rows"})


def sitting_form(sent: Sent, shop: Shop) -> Form:
    """Return the form with what was sent in it."""
    return form_of(SITTING)(sent, meta={"shop": shop, "lines": line_numbers(sent)})


def new_sitting(hand: AtHand, shop: Shop, timed: Session | None = None) -> Sent:
    """Return what the form begins with: today, where she is, and what a clock has timed."""
    notation = shop.notation
    filled: dict[str, object] = {
        "day": DAY.show(shop.today() if timed is None else timed.day, notation),
        "rows": str(hand.progress.rows_done),
        "doing": Doing.AT_THE_HOOK.value,
        "used": [
            {"colour": name, "ball_g": NUMBER.show(weights[0], notation)}
            for name, weights in ball_weights(hand).items()
        ],
    }
    if timed is not None:
        filled["minutes"] = NUMBER.show(timed.minutes, notation)
    return MultiDict(sent_as(filled))


def ball_weights(hand: AtHand) -> dict[str, list[float]]:
    """Return what a ball of each colour weighs, that which is bought for the order first."""
    quote = hand.quote
    return {
        colour.colour: list(
            dict.fromkeys(
                [
                    *(some.put_up.weight_g for some in colour.choice.bought),
                    *(p.weight_g for p in quote.workshop.yarn(colour.source.yarn).put_ups),
                ]
            )
        )
        for colour in quote.estimate.colours
    }


def read_sitting(
    sent: Sent, hand: AtHand, shop: Shop, timed: Session | None = None
) -> tuple[Sitting, tuple[LogLine, ...]]:
    """Return what was typed, and the lines that it comes to.

    A session that a clock `timed` keeps the moment at which it began, and has the rows that were
    ticked since. Errors: one refusal with every mistake.
    """
    told = _with_typed_units(sent, shop)
    sitting = read_value(content_of(told), SITTING, Document.LOG, shop.notation)
    began = _began(sitting, timed)
    return sitting, sitting_lines(sitting, done=_done_before(hand, timed), started=began)


def _with_typed_units(sent: Sent, shop: Shop) -> Sent:
    """Return what was sent, yarn that was typed with a unit told in that.

    A weight is one, whichever unit stands beside its field; balls may be said where they do.
    """
    told = MultiDict(sent)
    balls = [shop.speech.worded(word) for word in ("balls", "ball")]
    for number in line_numbers(sent).get("used", []):
        amount, beside = f"used.{number}.amount", f"used.{number}.ball_g"
        text = sent.get(amount, "").strip()
        ball = next((word for word in balls if text.lower().endswith(word.lower())), "")
        if ball and sent.get(beside, ""):
            told[amount] = text[: -len(ball)]
        elif _is_weight(text, shop):
            told[beside] = ""
    return told


def _is_weight(text: str, shop: Shop) -> bool:
    try:
        read_measure(text, shop.marks, MASS)
    except Refused:
        return False
    return True


def _done_before(hand: AtHand, timed: Session | None) -> int:
    """Return how many rows were done before a sitting: of a session, when its clock was started."""
    if timed is None or timed.started is None:
        return hand.progress.rows_done
    before = tuple(entry for entry in hand.entries if entry.at < timed.started)
    return min(hand.progress.rows_done, rows_done(before))


def _began(sitting: Sitting, timed: Session | None) -> datetime | None:
    """Return when a sitting began, None where that is not told, or on a day no zone can tell."""
    if sitting.begun is None:
        return None if timed is None else timed.started
    if sitting.day.year not in YEARS:
        return None
    return datetime.combine(sitting.day, sitting.begun).astimezone()


def in_sitting(mistakes: tuple[Mistake, ...], line: LogLine, sitting: Sitting) -> Iterator[Mistake]:
    """Yield the mistakes of one line at the fields of the sitting that it came from."""
    for mistake in mistakes:
        yield Mistake(_place(mistake.place, line, sitting), mistake.code, mistake.facts)


def _place(place: Place, line: LogLine, sitting: Sitting) -> Place:
    if isinstance(line, YarnUsed):
        colours = [consumed.colour for consumed in sitting.used]
        return at("used", colours.index(line.colour) + 1, "amount")
    return placed("rows") if place.key in ROW_FIELDS else place


def say_of_sitting(
    form: Form, mistakes: tuple[Mistake, ...], sent: Sent, shop: Shop
) -> tuple[Said, ...]:
    """Put mistakes beside their fields, and return them for the head of the page."""

    def where(place: Place, field: Field | None) -> str:
        label = label_of(place, field)
        match place.parts:
            case ("used", int(number), *_):
                return f"{sent.get(f'used.{number}.colour', '')}, {label.lower()}"
        return label

    return say_beside(form, mistakes, shop.speech, where)
