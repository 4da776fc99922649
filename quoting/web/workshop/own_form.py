"""The workshop as a form sends it: one page's fields as they were typed, the others' as kept."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.workshop.workshop import Workshop
from quoting.schema.reading import read_workshop
from quoting.schema.workshop_shape import WORKSHOP
from quoting.web.forms.from_shape import form_of
from quoting.web.forms.sent import Sent, content_of, line_numbers, sent_as
from quoting.web.shop import Shop
from quoting.web.workshop.own_pages import OwnPage
from quoting.web.workshop.renaming import WAS, renamed
from quoting.wording import is_locale


def own_workshop(shop: Shop) -> Workshop:
    """Return the workshop without the reference rates, which nobody typed."""
    return replace(shop.workshop, exchange=shop.typed_rates)


def sent_workshop(workshop: Workshop, shop: Shop) -> Sent:
    """Return what the form of a workshop sends; each name is sent with what it was."""
    sent: Sent = MultiDict(sent_as(WORKSHOP.write(workshop, shop.notation)))
    for name, text in [*sent.items()]:
        if is_own_name(name):
            sent[f"{name.rpartition('.')[0]}.{WAS}"] = text
    return sent


def is_own_name(field_name: str) -> bool:
    """Return whether a field gives a name that others go by, such as a yarn's or a colour's."""
    match field_name.split("."):
        case ["yarns" | "patterns" | "motifs", _, "name"] | ["yarns", _, "colours", _, "name"]:
            return True
    return False


def of_page(page: OwnPage, sent: Sent) -> Sent:
    """Return the fields of a form that stand on a page."""
    return MultiDict((name, text) for name, text in sent.items() if page.has(name))


def whole_sent(page: OwnPage, sent: Sent, workshop: Workshop, shop: Shop) -> Sent:
    """Return the whole workshop as a form sends it, of this page as `sent`.

    What goes by a name follows it when it is changed.
    """
    kept = sent_workshop(workshop, shop)
    others = [(name, text) for name, text in kept.items() if not page.has(name)]
    return renamed(MultiDict([*others, *of_page(page, sent).items()]))


def bind_workshop(sent: Sent, shop: Shop) -> Form:
    """Return the form of a workshop with what was sent in it."""
    return form_of(WORKSHOP)(sent, meta={"shop": shop, "lines": line_numbers(sent)})


def read_sent_workshop(sent: Sent, shop: Shop) -> Workshop:
    """Return the workshop that was sent. Errors: one refusal with every mistake."""
    return read_workshop(content_of(sent), is_locale, shop.notation)


def differences(sent: Sent, other: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Yield the fields that another form has otherwise, each with its text there."""
    for name in {**sent, **other}:
        is_was = name.endswith(f".{WAS}")
        if not is_was and (sent.get(name) or "").strip() != (other.get(name) or "").strip():
            yield name, other.get(name) or ""
