"""Every code has a sentence, and no sentence is left for a code that is gone."""

from __future__ import annotations

import re
from datetime import date
from decimal import Decimal
from types import ModuleType

import pytest

from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import Fact, Mistake
from quoting.wording import FILE_SPEECH, Speech, caution_sentence, mistake_sentence
from quoting.wording import cautions as caution_table
from quoting.wording import mistakes as mistake_table
from quoting.wording.phrases import names_in
from tests.paths import place_of
from tests.wording.codes_in_the_source import SOURCES, caution_calls, constants, mistake_calls
from tests.wording.speeches import DE, GB, US

OWN_NAMES = {"unknown-yarn", "unknown-colour", "unknown-stitch", "unknown-key", "no-rate"}
"""These list names of the maker's own, of which there may be none."""

NO_CODES = {"whole-number", "yes-or-no", "money-text"}
"""What `wrong-type` says is wanted; these have words of their own."""

SAMPLE_FACTS: dict[str, Fact] = {
    "read": "hbc",
    "known": ("sc", "hdc", "dc"),
    "limit": 12,
    "smallest_cm": 31.16,
    "smallest_body_cm": 28.6,
    "as_decimal": Decimal("1.500"),
    "as_grouping": Decimal(1500),
    "kept": Decimal("0.75"),
    "fees": Decimal("0.8"),
    "price": Decimal("-3.50"),
    "ready_by": date(2027, 4, 1),
    "wanted_by": date(2027, 3, 20),
    "stitches": ("sc", "moss"),
    "colours": ("teal", "rust"),
    "hours": Decimal("5.08"),
    "tasks": ("turn", "wash"),
    "earned": Decimal("9.10"),
    "pay": Decimal(14),
    "minimum": Decimal(60),
    "advised_in": "GB",
    "currency": "GBP",
}


def sample(name: str) -> Fact:
    text = {"file", "said", "wanted", "terms", "begins", "country", "stitch", "colour"}
    return SAMPLE_FACTS.get(name, "oat" if name in text else 7)


def test_the_search_for_codes_finds_those_that_are_known_to_be_there() -> None:
    assert {"missing", "too-small", "unknown-key", "not-a-number", "width-too-small"} <= {
        code for code, _ in mistake_calls()
    }
    assert {"late", "hands", "many-ends"} <= {code for code, _ in caution_calls()}


def test_every_mistake_that_can_be_found_has_a_sentence() -> None:
    assert {code for code, _ in mistake_calls()} - set(mistake_table.MISTAKES) == set()


def test_every_caution_that_can_be_given_has_a_sentence() -> None:
    assert {code for code, _ in caution_calls()} - set(caution_table.CAUTIONS) == set()


def test_every_word_in_the_source_that_looks_like_a_code_has_a_sentence() -> None:
    said = set(mistake_table.MISTAKES) | set(caution_table.CAUTIONS) | NO_CODES
    assert constants(*SOURCES) - said == set()


@pytest.mark.parametrize("table", [mistake_table, caution_table])
def test_no_sentence_is_left_for_a_code_that_is_gone(table: ModuleType) -> None:
    sources = "".join(path.read_text("utf-8") for path in SOURCES if path.stem != "codes")
    sentences = getattr(table, "MISTAKES", None) or table.CAUTIONS
    used = set(re.findall(r"\b(?:MistakeCode|CautionCode)\.([A-Z_]+)", sources))
    assert [code for code in sentences if code.name not in used] == []


def test_every_code_has_a_sentence() -> None:
    assert set(mistake_table.MISTAKES) == set(MistakeCode)
    assert set(caution_table.CAUTIONS) == set(CautionCode)


@pytest.mark.parametrize("speech", [GB, DE, US, FILE_SPEECH], ids=lambda s: s.locale)
def test_each_mistake_can_be_said_with_the_facts_it_comes_with(speech: Speech) -> None:
    for code, names in mistake_calls():
        facts = {name: sample(name) for name in names}
        check_mistake(code, facts, speech)
        if code in OWN_NAMES:
            check_mistake(code, facts | {"known": ()}, speech)


def check_mistake(code: str, facts: dict[str, Fact], speech: Speech) -> None:
    said = mistake_sentence(Mistake(place_of("blanket.width"), code, facts), speech)
    assert not re.search(r"[{}]|None|cannot be taken as it is", said), said
    assert said[-1] in ".?", said


@pytest.mark.parametrize("speech", [GB, DE, US, FILE_SPEECH], ids=lambda s: s.locale)
def test_each_caution_can_be_said_with_the_facts_it_comes_with(speech: Speech) -> None:
    for code, names in caution_calls():
        facts = {name: sample(name) for name in names}
        said = caution_sentence(Caution(code, Reader.MAKER, facts), speech)
        assert not re.search(r"[{}]|None|cannot be taken as it is", said), said


def test_a_sentence_with_every_fact_uses_only_names_that_have_one() -> None:
    for table in (mistake_table.MISTAKES, caution_table.CAUTIONS):
        for code, sentences in table.items():
            for sentence in sentences:
                said = {name: sample(name) for name in names_in(sentence)}
                tell = caution_sentence if table is caution_table.CAUTIONS else None
                if tell:
                    assert "{" not in tell(Caution(code, Reader.MAKER, said), GB)
                else:
                    assert "{" not in mistake_sentence(Mistake(place_of("x"), code, said), GB)


def test_braces_that_were_typed_are_shown_as_typed() -> None:
    said = mistake_sentence(
        Mistake(place_of("order.title"), "not-a-number", {"read": "{limit} {0}"}), GB
    )
    assert "{limit} {0}" in said


def test_a_code_nobody_knows_is_still_said() -> None:
    assert "brand new" in mistake_sentence(Mistake(place_of("x"), "brand-new", {}), GB)
