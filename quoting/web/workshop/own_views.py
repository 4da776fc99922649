"""A page of the workshop as it is shown: its fields, and what they offer to choose from."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from flask import render_template
from wtforms import Form

from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.workshop.categories import SC_IN_FOUR_INCHES
from quoting.web.forms.line_changes import removed_lines
from quoting.web.forms.lines import entries_of, typed_of
from quoting.web.orders.choices import Offer, basic_stitches, offered_languages
from quoting.web.shop import shop_now
from quoting.web.workshop.own_answer import OwnAnswer, shown
from quoting.web.workshop.own_form import own_workshop, sent_workshop
from quoting.web.workshop.own_lines import LINE_NAMES
from quoting.web.workshop.own_pages import OwnPage
from quoting.web.workshop.suggested import suggestions
from quoting.web.workshop.usual_minutes import counted_texts, usual_texts
from quoting.wording import SHAPES, Speech, category_words, locale_names


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnOffers:
    """Everything that the lists of these pages offer."""

    yarns: tuple[Offer, ...]
    basic: tuple[Offer, ...]
    stitches: tuple[Offer, ...]
    motifs: tuple[Offer, ...]
    shapes: tuple[Offer, ...]
    categories: tuple[Offer, ...]
    locales: tuple[Offer, ...]
    currencies: tuple[Offer, ...]
    languages: tuple[Offer, ...]


def page_as_kept(page: OwnPage, **more: Any) -> str:
    """Return the page with what the book has."""
    shop = shop_now()
    answer = shown(page, sent_workshop(own_workshop(shop), shop), shop)
    return page_with(page, answer, based_on=shop.version, **more)


def page_with(page: OwnPage, answer: OwnAnswer, *, focus: str = "", **more: Any) -> str:
    """Return the page with an answer, and what else its template shows."""
    shop = shop_now()

    def opened(place: str) -> bool:
        """Return whether a line is unfolded: something is said in it, or was done to it."""
        named = (focus, *(said.field_id for said in answer.said))
        return any(f"{place}." in f"{name}." for name in named)

    return render_template(
        f"{page.name}/own.html",
        page=page,
        here=page.name,
        answer=answer,
        form=answer.form,
        offers=offers_of(answer.form, shop.speech),
        removed=removed_lines(answer.sent),
        line_names={kind: shop.speech.worded(name) for kind, name in LINE_NAMES.items()},
        colours_of=colours_of,
        opened=opened,
        usual=usual_texts(shop.notation),
        counted=counted_texts(shop.notation),
        suggestions=lambda locale: suggestions(locale, shop.workshop),
        focus=focus,
        **more,
    )


def offers_of(form: Form, speech: Speech) -> OwnOffers:
    """Return what the lists of a form offer; what has a name of the maker's, it names itself."""
    basic = basic_stitches(speech)
    return OwnOffers(
        yarns=_named(form, "yarns"),
        basic=basic,
        stitches=(*basic, *_named(form, "patterns")),
        motifs=_named(form, "motifs"),
        shapes=tuple(Offer(value=shape, label=words) for shape, words in SHAPES.items()),
        categories=tuple(
            Offer(value=str(number), label=category_words(number)) for number in SC_IN_FOUR_INCHES
        ),
        locales=tuple(Offer(value=code, label=name) for code, name in locale_names(speech)),
        currencies=tuple(Offer(value=code, label=code) for code in sorted(MINOR_DIGITS)),
        languages=offered_languages(
            *(typed_of(line, "language").typed for line in entries_of(form, "words_in"))
        ),
    )


def colours_of(yarn: Form) -> tuple[Offer, ...]:
    """Return the colours that a yarn's lines name."""
    return tuple(
        Offer(value=name, label=name, code=typed_of(line, "value").typed)
        for line in entries_of(yarn, "colours")
        if (name := typed_of(line, "name").typed.strip())
    )


def _named(form: Form, list_name: str) -> tuple[Offer, ...]:
    names = (typed_of(line, "name").typed.strip() for line in entries_of(form, list_name))
    return tuple(Offer(value=name, label=name) for name in dict.fromkeys(names) if name)
