"""From the form to an order: every mistake in it at once, each at its place."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any, TypeVar

from wtforms import Form

from quoting.core.design import BorderBand, ColourSource, Corner, Design, Section, StopAt, Stripe
from quoting.core.errors import Mistake, Refused
from quoting.core.order import Extra, Order, Terms, check_order
from quoting.core.terms import Target
from quoting.core.workshop import Workshop
from quoting.web.fields import Typed
from quoting.web.order_form import OrderForm

T = TypeVar("T")

_STRIPE = Stripe(colour="-")
_SECTION = Section(stripes=(_STRIPE,))
_STAND_INS: Mapping[type[Any], Mapping[str, tuple[str, Any]]] = {
    Stripe: {"colour": ("colour", "-"), "rows": ("rows", 1), "stitch": ("stitch", None)},
    Section: {
        "stripes": ("stripes", (_STRIPE,)),
        "share": ("share", None),
        "repeats": ("repeats", None),
    },
    BorderBand: {
        "stitch": ("stitch", "-"),
        "colour": ("colour", "-"),
        "rounds": ("rounds", 1),
        "row_end_ratio": ("row_end_ratio", None),
    },
    Extra: {
        "what": ("what", "-"),
        "cost": ("cost", 0),
        "minutes": ("minutes", 0.0),
        "metres": ("yarn_m", 0.0),
        "colour": ("colour", "-"),
    },
    Target: {"margin": ("margin", 0.0), "markup": ("markup", None), "given": ("given", None)},
    Terms: {"discount": ("discount", 0.0), "rush": ("rush", 0.0)},
    Design: {
        "width": ("width_cm", 1.0),
        "height": ("height_cm", 1.0),
        "stitch": ("stitch", "-"),
        "yarn": ("yarn", "-"),
        "stitches": ("stitches", None),
        "multiple": ("multiple", None),
        "plus": ("plus", None),
        "first_rows": ("first_rows", ()),
        "last_rows": ("last_rows", ()),
        "sections": ("sections", (_SECTION,)),
    },
    Order: {
        "order.title": ("title", "-"),
        "order.buyer": ("buyer", ""),
        "order.notes": ("notes", ""),
        "order.deliver_to": ("deliver_to", None),
        "order.quantity": ("quantity", 1),
        "order.pays_in": ("pays_in", None),
    },
}
"""What takes the place of a value that is refused, so that the rest is checked all the same."""


class Draft:
    """Reads fields and builds values, noting each mistake once and none that only follows."""

    def __init__(self) -> None:
        self.mistakes: list[Mistake] = []
        self._closed: set[str] = set()

    def keep(self, mistakes: Iterable[Mistake], place: str = "") -> None:
        """Note the mistakes that are not at, or inside, a place that has one already."""
        found = [mistake.under(place) for mistake in mistakes]
        fresh = [mistake for mistake in found if not self._is_closed(mistake.place)]
        self.mistakes += fresh
        self._closed.update(mistake.place for mistake in fresh)

    def _is_closed(self, place: str) -> bool:
        while place and place not in self._closed:
            place = place.rpartition(".")[0]
        return bool(place)

    def read(self, field: Typed, place: str, stand_in: T, *, needed: bool = False) -> Any | T:
        """Return a field's value; the stand-in where it is blank or cannot be read."""
        if field.mistake is not None:
            self.keep([Mistake(place, field.mistake.code, field.mistake.facts)])
        elif field.data is None and needed:
            self.keep([Mistake(place, "missing")])
        return stand_in if field.data is None else field.data

    def build(self, kind: type[T], place: str, **values: Any) -> T:
        """Return a value of that kind, what is refused of it noted and replaced."""
        try:
            return kind(**values)
        except Refused as refused:
            self.keep(refused.mistakes, place)
            stand_ins = dict(_STAND_INS[kind][mistake.place] for mistake in refused.mistakes)
            if kind is Target:
                stand_ins = {"margin": 0.0, "markup": None, "given": None}
            return kind(**(values | stand_ins))


def read_order(form: OrderForm, workshop: Workshop) -> Order:
    """Return the order that the form says. Errors: one refusal with every mistake."""
    draft = Draft()
    head, price = form.order.form, form.price.form
    order = draft.build(
        Order,
        "",
        title=draft.read(head.title, "order.title", "-", needed=True),
        buyer=draft.read(head.buyer, "order.buyer", ""),
        for_baby=head.for_baby.data,
        quantity=draft.read(head.quantity, "order.quantity", 1),
        wanted_by=draft.read(head.wanted_by, "order.wanted_by", None),
        deliver_to=draft.read(head.deliver_to, "order.deliver_to", None),
        pays_in=draft.read(head.pays_in, "order.pays_in", None),
        notes=draft.read(head.notes, "order.notes", ""),
        extras=tuple(
            _extra(draft, line, f"extras.{nr}") for nr, line in enumerate(form.extras.entries, 1)
        ),
        terms=_terms(draft, price),
        design=_design(draft, form.blanket.form),
    )
    try:
        check_order(order, workshop)
    except Refused as refused:
        draft.keep(refused.mistakes)
    if draft.mistakes:
        raise Refused(*draft.mistakes)
    return order


def _terms(draft: Draft, price: Form) -> Terms:
    wishes = {
        name: draft.read(price[name], f"price.{name}", None)
        for name in ("margin", "markup", "given")
    }
    given = any(wish is not None for wish in wishes.values())
    return draft.build(
        Terms,
        "price",
        target=draft.build(Target, "price", **wishes) if given else None,
        discount=draft.read(price["discount"], "price.discount", 0.0),
        rush=draft.read(price["rush"], "price.rush", 0.0),
    )


def _design(draft: Draft, form: Form) -> Design:
    at = "blanket"
    return draft.build(
        Design,
        at,
        width_cm=draft.read(form["width"], f"{at}.width", 1.0, needed=True),
        height_cm=draft.read(form["height"], f"{at}.height", 1.0, needed=True),
        stitch=draft.read(form["stitch"], f"{at}.stitch", "-", needed=True),
        yarn=draft.read(form["yarn"], f"{at}.yarn", "-", needed=True),
        stitches=draft.read(form["stitches"], f"{at}.stitches", None),
        multiple=draft.read(form["multiple"], f"{at}.multiple", None),
        plus=draft.read(form["plus"], f"{at}.plus", None),
        stop_at=draft.read(form["stop_at"], f"{at}.stop_at", StopAt.REPEAT),
        mix_lots=form["mix_lots"].data,
        first_rows=_stripes(draft, form["first_rows"], f"{at}.first_rows"),
        last_rows=_stripes(draft, form["last_rows"], f"{at}.last_rows"),
        sections=tuple(
            _section(draft, line, f"{at}.sections.{nr}")
            for nr, line in enumerate(form["sections"].entries, 1)
        ),
        border=tuple(
            _band(draft, line, f"{at}.border.{nr}")
            for nr, line in enumerate(form["border"].entries, 1)
        ),
        colours=_colours(draft, form["colours"]),
    )


def _stripes(draft: Draft, lines: Any, at: str) -> tuple[Stripe, ...]:
    return tuple(
        draft.build(
            Stripe,
            f"{at}.{nr}",
            colour=draft.read(line["colour"], f"{at}.{nr}.colour", "-", needed=True),
            rows=draft.read(line["rows"], f"{at}.{nr}.rows", 1, needed=True),
            stitch=draft.read(line["stitch"], f"{at}.{nr}.stitch", None),
        )
        for nr, line in enumerate(lines.entries, 1)
    )


def _section(draft: Draft, form: Form, at: str) -> Section:
    return draft.build(
        Section,
        at,
        stripes=_stripes(draft, form["stripes"], f"{at}.stripes"),
        share=draft.read(form["share"], f"{at}.share", None),
        repeats=draft.read(form["repeats"], f"{at}.repeats", None),
    )


def _band(draft: Draft, form: Form, at: str) -> BorderBand:
    return draft.build(
        BorderBand,
        at,
        stitch=draft.read(form["stitch"], f"{at}.stitch", "-", needed=True),
        colour=draft.read(form["colour"], f"{at}.colour", "-", needed=True),
        rounds=draft.read(form["rounds"], f"{at}.rounds", 1),
        row_end_ratio=draft.read(form["row_end_ratio"], f"{at}.row_end_ratio", None),
        corner=draft.read(form["corner"], f"{at}.corner", Corner.CHAIN),
    )


def _extra(draft: Draft, form: Form, at: str) -> Extra:
    return draft.build(
        Extra,
        at,
        what=draft.read(form["what"], f"{at}.what", "-", needed=True),
        cost=draft.read(form["cost"], f"{at}.cost", 0),
        minutes=draft.read(form["minutes"], f"{at}.minutes", 0.0),
        colour=draft.read(form["colour"], f"{at}.colour", None),
        yarn_m=draft.read(form["metres"], f"{at}.metres", 0.0),
    )


def _colours(draft: Draft, lines: Any) -> Mapping[str, ColourSource]:
    found: dict[str, ColourSource] = {}
    for number, line in enumerate(lines.entries, 1):
        at = f"blanket.colours.{number}"
        name = draft.read(line["name"], f"{at}.name", "-", needed=True)
        if name in found:
            draft.keep([Mistake(f"{at}.name", "given-twice", {"read": name})])
        found[name] = ColourSource(
            yarn=draft.read(line["yarn"], f"{at}.yarn", "-", needed=True),
            colour=draft.read(line["colour"], f"{at}.colour", "-", needed=True),
        )
    return MappingProxyType(found)
