"""The pages on which a maker enters what the workshop file can say: each has tables of its own."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPage:
    """A page that enters some tables of the workshop, which no other page enters.

    `name` is its blueprint and the folder of its templates, `changed` its view that takes a form.
    """

    name: str
    title: str
    tables: tuple[str, ...]

    @property
    def changed(self) -> str:
        """The view that its form is sent to."""
        return f"own_pages.{self.name}"

    def has(self, field_name: str) -> bool:
        """Return whether a field of the workshop's form stands on this page."""
        return field_name.partition(".")[0] in self.tables


YARN = OwnPage(name="yarn", title="Yarn", tables=("yarns",))
MEASUREMENTS = OwnPage(
    name="measurements",
    title="Measurements",
    tables=("patterns", "swatches", "motifs", "timings", "minutes"),
)
WORKSHOP = OwnPage(
    name="workshop",
    title="Workshop",
    tables=(
        "workshop",
        "words_in",
        "documents",
        "pay",
        "price",
        "fees",
        "tax",
        "delivery",
        "calendar",
        "ranges",
        "exchange",
    ),
)
OWN_PAGES = (WORKSHOP, MEASUREMENTS, YARN)


def page_of(field_name: str) -> OwnPage | None:
    """Return the page on which a field stands, None where there is none."""
    return next((page for page in OWN_PAGES if page.has(field_name)), None)
