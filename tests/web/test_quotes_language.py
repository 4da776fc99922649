"""A quote is in the language that its order asks for, whatever is written into it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.workshop.documents import Documents
from quoting.core.workshop.own_words import MOST_WORDS, OwnWords, WordsIn
from quoting.core.workshop.workshop import Workshop
from quoting.places import catalogue_languages
from tests.examples import sample_workshop
from tests.web.conftest import maker_in
from tests.web.pages import Node, Page

SHOP = sample_workshop()
TOLD = replace(SHOP, documents=Documents(stitches=True, size_within_cm=2.0, change_days=5))
GERMAN = WordsIn(language="de", greeting="Guten Tag.")


def offered(workshop: Workshop = SHOP, **typed: str) -> Page:
    maker = maker_in(workshop)
    page = maker.send("/quote", **typed)
    assert maker.status == 200
    return page


def chosen(page: Page) -> dict[str, str]:
    """Return the languages that the worktable offers, each with its own name."""
    field = next(page.root.all(lambda node: node.attributes.get("name") == "order.language"))
    return {option.attributes["value"] or "": option.text for option in field.all("option")}


def language_of(page: Page) -> str | None:
    return next(page.root.all("html")).attributes["lang"]


def typed_words(page: Page) -> list[str]:
    kept = page.root.all(lambda node: node.attributes.get("class") == "as-typed")
    return ["".join(map(str, node.inside)) for node in kept]


def test_the_worktable_offers_each_language_by_its_own_name() -> None:
    offers = chosen(maker_in(SHOP).open("/"))
    assert offers[""] == "as in my workshop"
    assert offers["de"] == "Deutsch"
    assert {"en_GB", "en_US", *catalogue_languages()} < set(offers)


def test_a_language_of_another_country_that_a_file_asked_for_stays_on_offer() -> None:
    page = maker_in(SHOP).send("/", order__language="de_AT")
    assert chosen(page)["de_AT"] == "Deutsch (Österreich)"
    assert page.typed()["order.language"] == "de_AT"


@pytest.mark.parametrize("language", ["tlh", "<b>", "de'", "xx_YY"])
def test_one_that_there_is_not_is_refused_beside_its_field_and_kept(language: str) -> None:
    maker = maker_in(SHOP)
    page = maker.send("/quote", order__language=language)
    assert maker.status == 422
    assert "there are en" in page.said_of("order.language")
    assert page.typed()["order.language"] == language


def test_the_quote_is_in_the_orders_language_and_its_figures_are_written_so() -> None:
    page = offered(order__language="de_AT", price__given="1234.50")
    assert language_of(page) == "de"
    assert "1.234,50" in page.root.text.replace("\u00a0", ".")
    assert "25. November 2026" in page.root.text
    assert language_of(offered()) == "en"


def test_a_language_without_data_for_a_country_is_said_as_in_any() -> None:
    assert "25. November 2026" in offered(order__language="de_FR").root.text


def test_american_buyers_read_american_spelling_and_days() -> None:
    page = offered(order__language="en_US")
    assert "Colors" in page.root.text
    assert "November 25, 2026" in page.root.text


def test_the_makers_words_are_those_that_she_has_in_the_buyers_language() -> None:
    shop = replace(SHOP, own_words=OwnWords(greeting="Good day.", care="Dry flat."))
    shop = replace(shop, words_in=(GERMAN,))
    assert typed_words(offered(shop)) == ["Good day.", "Dry flat."]
    assert typed_words(offered(shop, order__language="de")) == ["Guten Tag.", "Dry flat."]


def test_what_the_maker_has_told_is_on_the_page_and_only_there() -> None:
    page = offered(TOLD)
    assert "What goes into it" in page.headings
    assert "each side to within 2 cm" in page.root.text.replace("\u00a0", " ")
    assert "until 5 days after you accept" in page.root.text
    assert "What goes into it" not in offered().headings


NAMES = [
    "<script>alert(1)</script> & <b>Rosalind</b>",
    'data-of="title"> Quill',
    "روزاليند كويل",
    "רוזלינד קוויל",
    "罗莎琳德·奎尔",
    "👩‍🌾 Quill 🧶",
    "{number} {title} %s",
    "Q" * 80,
]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("language", ["", "de"])
def test_any_name_is_shown_to_the_letter_and_is_never_markup(name: str, language: str) -> None:
    page = offered(order__buyer=name, order__title=name, order__language=language)
    assert page.headings[0] == name
    heading = next(page.root.all(lambda node: node.attributes.get("data-of") == "heading"))
    assert name in heading.text
    assert not [node for node in page.root.all("script") if "alert" in node.text]
    assert len(list(page.root.all(lambda node: node.attributes.get("data-of") == "title"))) == 1


def test_terms_of_ten_thousand_characters_are_shown_whole() -> None:
    terms = ("Line & <i>line</i>\n" * 1000)[:MOST_WORDS]
    (shown,) = typed_words(offered(replace(SHOP, own_words=OwnWords(terms=terms))))
    assert shown == terms


def test_a_price_of_nothing_is_refused_in_any_language() -> None:
    maker = maker_in(SHOP)
    page = maker.send("/quote", order__language="de", price__given="0.00")
    assert maker.status == 422
    assert page.said_of("price.given")


def test_the_drawing_is_titled_in_the_language_of_the_quote() -> None:
    """The drawing's title and description are read aloud: they are the buyer's, too."""
    english, german = (offered(order__language=language) for language in ("", "de_DE"))

    def described(page: Page) -> list[Node]:
        return [*page.root.all("desc")]

    assert "79.7 × 99.1" in described(english)[0].text
    assert "79,7 × 99,1" in described(german)[0].text
