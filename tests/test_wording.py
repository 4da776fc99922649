"""Every code has a sentence, and every figure is said as the locale, units and currency want."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

import quoting
from quoting.core.cautions import Caution, Reader, for_maker
from quoting.core.costing import Line, LineKind, Unit
from quoting.core.currencies import MINOR_DIGITS
from quoting.core.errors import Fact, Mistake, Refused
from quoting.core.measures import LEAST_CM, LEAST_G, LEAST_YARN_M, Units
from quoting.core.passes import Edge, Pass, Work
from quoting.core.stitches import Vocabulary
from quoting.notation import (
    LENGTH,
    MASS,
    YARN_LENGTH,
    Quantity,
    read_measure,
    read_number,
)
from quoting.wording import (
    FILE_SPEECH,
    Speech,
    caution_sentence,
    is_locale,
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    mistake_sentence,
    pass_words,
    sheet_money,
)
from quoting.wording import cautions as caution_table
from quoting.wording import mistakes as mistake_table
from quoting.wording.phrases import names_in

PACKAGE = Path(quoting.__file__).parent
SOURCES = [
    *(path for part in ("core", "intake", "notation") for path in (PACKAGE / part).rglob("*.py")),
    PACKAGE / "rates.py",
]
LOCALES = ["en_GB", "en_US", "de_DE", "de_CH", "fr_FR", "nb_NO", "en_IN", "ja_JP", "ar_EG", "fa_IR"]
CODE = re.compile(r"[a-z]+(-[a-z]+)+")
OWN_NAMES = {"unknown-yarn", "unknown-colour", "unknown-stitch", "unknown-key", "no-rate"}
"""These list names of the maker's own, of which there may be none."""

NO_CODES = {"whole-number", "yes-or-no", "money-text"}
"""What `wrong-type` says is wanted; these have words of their own."""

GB = Speech(locale="en_GB", currency="GBP")
DE = Speech(locale="de_DE", currency="EUR")
US = Speech(locale="en_US", units=Units.INCHES, currency="USD")
UK_NAMES = Speech(locale="en_GB", vocabulary=Vocabulary.UK, currency="GBP")


# -- codes, as the source has them -----------------------------------------------------------


def called(node: ast.Call) -> str:
    name = node.func
    return name.attr if isinstance(name, ast.Attribute) else getattr(name, "id", "")


def text_of(node: ast.expr | None) -> str | None:
    value = node.value if isinstance(node, ast.Constant) else None
    return value if isinstance(value, str) else None


def facts_of(node: ast.Call, tables: dict[str, set[str]]) -> set[str]:
    """Return the names of the facts: keywords, a table's keys, those of a table spread out."""
    names: set[str] = set()
    for word in node.keywords:
        names |= {word.arg} if word.arg else tables[ast.unparse(word.value)]
    for fact in node.args:
        names |= keys(fact) if isinstance(fact, ast.Dict) else tables.get(ast.unparse(fact), set())
    return names


def keys(table: ast.Dict) -> set[str]:
    return {key for key in map(text_of, table.keys) if key}


def named_tables(tree: ast.Module) -> dict[str, set[str]]:
    """Return the keys of every table that a module gives a name to."""
    return {
        ast.unparse(node.targets[0]): keys(node.value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Dict)
    }


def coded_calls(names: set[str], position: int) -> Iterator[tuple[str, set[str]]]:
    """Yield each code that is handed to one of these functions, with the facts beside it."""
    for path in SOURCES:
        tree = ast.parse(path.read_text("utf-8"))
        tables = named_tables(tree)
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call) or called(node) not in names:
                continue
            code = text_of(node.args[position]) if len(node.args) > position else None
            if code is not None:
                yield code, facts_of(node, tables)


def mistake_calls() -> list[tuple[str, set[str]]]:
    return list(coded_calls({"refuse", "add", "close", "Mistake"}, 1))


def caution_calls() -> list[tuple[str, set[str]]]:
    return list(coded_calls({"for_maker", "for_buyer"}, 0))


def constants(*paths: Path) -> set[str]:
    """Return the texts that look like codes, but for the words of closed choices."""
    texts: set[str | None] = set()
    for path in paths:
        tree = ast.parse(path.read_text("utf-8"))
        choices = [n for n in ast.walk(tree) if isinstance(n, ast.ClassDef) and is_choice(n)]
        words = {id(inner) for choice in choices for inner in ast.walk(choice)}
        nodes = [n for n in ast.walk(tree) if isinstance(n, ast.Constant) and id(n) not in words]
        texts |= {text_of(node) for node in nodes}
    return {text for text in texts if text and CODE.fullmatch(text)}


def is_choice(node: ast.ClassDef) -> bool:
    return any(isinstance(base, ast.Name) and base.id == "StrEnum" for base in node.bases)


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
    "earned": Decimal("9.10"),
    "pay": Decimal(14),
    "minimum": Decimal(60),
}


def sample(name: str) -> Fact:
    text = {"file", "said", "wanted", "terms", "currency", "begins", "country", "stitch", "colour"}
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
    sources = "".join(path.read_text("utf-8") for path in SOURCES)
    sentences = getattr(table, "MISTAKES", None) or table.CAUTIONS
    assert [code for code in sentences if f'"{code}"' not in sources] == []


@pytest.mark.parametrize("speech", [GB, DE, US, FILE_SPEECH], ids=lambda s: s.locale)
def test_each_mistake_can_be_said_with_the_facts_it_comes_with(speech: Speech) -> None:
    for code, names in mistake_calls():
        facts = {name: sample(name) for name in names}
        check_mistake(code, facts, speech)
        if code in OWN_NAMES:
            check_mistake(code, facts | {"known": ()}, speech)


def check_mistake(code: str, facts: dict[str, Fact], speech: Speech) -> None:
    said = mistake_sentence(Mistake("blanket.width", code, facts), speech)
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
                    assert "{" not in mistake_sentence(Mistake("x", code, said), GB)


def test_braces_that_were_typed_are_shown_as_typed() -> None:
    said = mistake_sentence(Mistake("order.title", "not-a-number", {"read": "{limit} {0}"}), GB)
    assert "{limit} {0}" in said


def test_a_code_nobody_knows_is_still_said() -> None:
    assert "brand new" in mistake_sentence(Mistake("x", "brand-new", {}), GB)


# -- mistakes --------------------------------------------------------------------------------


def test_a_blanket_too_narrow_is_told_a_width_that_is_not_too_narrow_itself() -> None:
    mistake = Mistake("blanket.width", "width-too-small", {"smallest_cm": 31.161})
    assert "31.2\u00a0cm" in mistake_sentence(mistake, GB)
    inches = mistake_sentence(mistake, US)
    shown = re.search(r"[\d.]+\u00a0in", inches)
    assert shown
    assert read_measure(shown[0], US.marks) >= 31.161


def test_a_nearly_right_name_is_answered_with_the_right_one() -> None:
    facts: dict[str, Fact] = {"read": "strips", "known": ("stripes", "share"), "nearest": "stripes"}
    said = mistake_sentence(Mistake("blanket.sections.1.strips", "unknown-key", facts), GB)
    assert said.endswith("Did you mean stripes?")
    assert "“strips”" in said
    assert "stripes or share" in said


@pytest.mark.parametrize(
    ("place", "read", "limit", "said"),
    [
        ("blanket.width", 2000.0, 1000.0, "2,000\u00a0cm"),
        ("yarns.1.put_ups.1.grams", 20000.0, 10000.0, "20,000\u00a0g"),
        ("yarns.1.put_ups.1.metres", 200000.0, 100000.0, "200,000\u00a0m"),
        ("extras.1.cost", Decimal("2E9"), 1_000_000_000, "£2,000,000,000.00"),
        ("price.discount", 1.5, 0.99, "1.5 (150%)"),
        ("blanket.sections.2.stripes.1.rows", 20000, 10000, "20,000"),
        ("exchange.EUR.rate", Decimal("2E9"), 1e9, "2,000,000,000 is"),
    ],
)
def test_a_limit_is_said_in_the_unit_that_its_place_is_given_in(
    place: str, read: float, limit: float, said: str
) -> None:
    facts: dict[str, Fact] = {"read": read, "limit": limit}
    assert said in mistake_sentence(Mistake(place, "too-large", facts), GB)


@pytest.mark.parametrize("speech", [GB, US], ids=lambda s: s.locale)
@pytest.mark.parametrize(
    ("place", "limit", "quantity"),
    [
        ("swatches.1.gauge.width", LEAST_CM, LENGTH),
        ("yarns.1.put_ups.1.grams", LEAST_G, MASS),
        ("yarns.1.put_ups.1.metres", LEAST_YARN_M, YARN_LENGTH),
    ],
)
@pytest.mark.parametrize("short_by", [0.01, 0.5, 0.99])
def test_the_least_that_is_told_will_do_and_what_was_read_is_told_to_be_under_it(
    speech: Speech, place: str, limit: float, quantity: Quantity, short_by: float
) -> None:
    facts: dict[str, Fact] = {"read": limit * (1 - short_by), "limit": limit}
    said = mistake_sentence(Mistake(place, "too-small", facts), speech)
    read, least = (
        read_measure(shown, speech.marks, quantity)
        for shown in re.findall(r"[\d.]+\u00a0\w+", said)
    )
    assert read < limit <= least < 1.1 * limit


def test_a_negative_length_is_told_as_it_is() -> None:
    facts: dict[str, Fact] = {"read": -2.54, "limit": 0}
    said = mistake_sentence(Mistake("workshop.carry_height", "too-small", facts), US)
    assert said == "-1\u00a0in is too small; the least that will do is 0\u00a0in."


def test_a_doubtful_number_is_answered_with_both_readings_as_they_can_be_typed() -> None:
    with pytest.raises(Refused) as refused:
        read_number("1.500", DE.marks.__class__(",", " "))
    said = mistake_sentence(refused.value.mistakes[0], DE)
    assert "1,5" in said
    assert "1500" in said


# -- cautions --------------------------------------------------------------------------------


def test_many_ends_are_said_with_their_hours_and_with_what_would_leave_fewer() -> None:
    said = caution_sentence(for_maker("many-ends", ends=122, hours=Decimal("5.08")), GB)
    assert said.startswith("These stripes leave 122 ends, about 5\u00a0h 5\u00a0min of weaving in.")
    assert "6 ends, and 2 more for each ball joined" in said


def test_a_maker_who_speaks_uk_hears_uk_names_and_her_patterns_own() -> None:
    said = caution_sentence(for_maker("one-timing", stitches=("sc", "hdc", "moss")), UK_NAMES)
    assert "dc, htr and moss" in said


def test_words_of_the_program_are_not_said_to_a_maker() -> None:
    said = " ".join(s for ones in caution_table.CAUTIONS.values() for s in ones)
    assert not re.search(r"\bpass(es)?\b|put-up|opening|strand", re.sub(r"\{\w+\}", "", said))


# -- money, numbers, measures ----------------------------------------------------------------


def test_money_has_the_decimals_of_iso_4217_not_those_of_the_locale_data() -> None:
    """ISO 4217 list one: ISK 0, KWD 3, and RSD 2 where CLDR shows none."""
    assert GB.money(Decimal("1234.5")) == "£1,234.50"
    assert GB.money(Decimal("1234"), "JPY") == "JP¥1,234"
    assert GB.money(Decimal("1.5"), "RSD").endswith("1.50")
    assert GB.money(Decimal("1.5"), "KWD").endswith("1.500")
    assert GB.money(Decimal("15"), "ISK").endswith("15")


@pytest.mark.parametrize("locale", LOCALES)
@pytest.mark.parametrize("currency", ["GBP", "JPY", "KWD", "RSD", "UGX", "IQD", "HUF"])
def test_money_can_be_read_back_to_the_last_digit(locale: str, currency: str) -> None:
    speech = Speech(locale=locale, currency=currency)
    amount = Decimal(1234567).scaleb(-MINOR_DIGITS[currency])
    digits = re.sub(r"\D", "", speech.money(amount))
    assert digits == "1234567"
    assert read_number(speech.bare_money(amount), speech.marks) == amount


def test_a_half_is_rounded_up_and_never_to_even() -> None:
    assert GB.number(Decimal("0.125"), 2) == "0.13"
    assert GB.number(2.5, 0) == "3"
    assert GB.percent(Decimal("0.0025"), 1) == "0.3%"


def test_the_yen_sign_is_the_usual_one_in_every_locale() -> None:
    japan = Speech(locale="ja_JP", currency="JPY")
    assert japan.money(Decimal(1200)) == "¥1,200"
    assert sheet_money(japan) == '"¥"#,##0'


def test_a_rate_finer_than_money_keeps_its_digits() -> None:
    assert GB.rate(Decimal("0.0425")) == "£0.0425"
    assert GB.rate(Decimal("14")) == "£14.00"
    assert GB.rate(Decimal("0.046")) == "£0.046"


def test_a_negative_amount_is_shown_as_one() -> None:
    assert GB.money(Decimal("-12.50")) == "-£12.50"


def test_sizes_yarn_and_weights_are_in_the_workshops_units() -> None:
    assert GB.length(80) == "80\u00a0cm"
    assert GB.size(79.6667, 99.1167) == "79.7 × 99.1\u00a0cm"
    assert US.length(80.01) == "31.5\u00a0in"
    assert DE.length(79.6667) == "79,7\u00a0cm"
    assert GB.yarn_length(210.4) == "210\u00a0m"
    assert US.yarn_length(91.44) == "100\u00a0yd"
    assert GB.weight(100.0) == "100\u00a0g"
    assert US.weight(100.0) == "3.5\u00a0oz"


@pytest.mark.parametrize("locale", LOCALES)
def test_a_length_that_is_shown_can_be_typed_in_again(locale: str) -> None:
    for units in Units:
        speech = Speech(locale=locale, units=units)
        assert read_measure(speech.length(123.4), speech.marks) == pytest.approx(123.4, abs=0.13)


@pytest.mark.parametrize(
    ("hours", "said"),
    [
        ("31.33", "31\u00a0h 20\u00a0min"),
        ("5.00", "5\u00a0h"),
        ("0.75", "45\u00a0min"),
        ("0", "0\u00a0min"),
        ("1.999", "2\u00a0h"),
    ],
)
def test_hours_are_said_as_hours_and_minutes(hours: str, said: str) -> None:
    assert GB.hours(Decimal(hours)) == said


def test_a_range_of_hours_is_said_in_whole_hours_unless_they_are_few() -> None:
    assert GB.hours_range(Decimal("28.6"), Decimal("35.2")) == "29 to 35\u00a0h"
    assert GB.hours_range(Decimal("1.24"), Decimal("2.06")) == "1.2 to 2.1\u00a0h"


def test_a_day_is_written_out() -> None:
    assert GB.day(date(2027, 3, 20)) == "20 March 2027"


def test_one_thing_is_one_and_more_are_many() -> None:
    assert [GB.count(n, "skein") for n in (0, 1, 3)] == ["0 skeins", "1 skein", "3 skeins"]


@pytest.mark.parametrize("text", ["en_GB", "de-CH", "nb_NO", "zh_Hans_CN", "pt"])
def test_a_locale_there_is_data_for_is_one(text: str) -> None:
    assert is_locale(text)


@pytest.mark.parametrize("text", ["", "English", "xx_YY", "en_GB_", "../etc", "en GB", "e" * 5000])
def test_any_other_text_is_no_locale(text: str) -> None:
    assert not is_locale(text)


# -- spreadsheet formats, lines, rows --------------------------------------------------------


@pytest.mark.parametrize(
    ("locale", "currency", "code"),
    [
        ("en_GB", "GBP", '"£"#,##0.00'),
        ("de_DE", "EUR", '#,##0.00"\u00a0€"'),
        ("en_GB", "JPY", '"JP¥"#,##0'),
        ("en_GB", "KWD", '"KWD"#,##0.000'),
        ("en_IN", "INR", '"₹"#,##0.00'),
    ],
)
def test_a_cell_of_money_has_the_locales_symbol_and_the_currencys_decimals(
    locale: str, currency: str, code: str
) -> None:
    assert sheet_money(Speech(locale=locale, currency=currency)) == code


def line(kind: LineKind, unit: Unit, quantity: str, rate: str, **more: Any) -> Line:
    count, each = Decimal(quantity), Decimal(rate)
    return Line(kind=kind, unit=unit, quantity=count, rate=each, amount=count * each, **more)


def test_a_line_says_what_it_is_for() -> None:
    skeins = line(LineKind.YARN, Unit.SKEIN, "3", "4.60", subject="oat", ball_g=100.0)
    packs = line(LineKind.YARN, Unit.PACK, "1", "20", subject="oat", ball_g=50.0, pack=10)
    fee = line(LineKind.FEE, Unit.MONEY, "297.00", "0.015", subject="Card payment")
    making = line(LineKind.MAKING, Unit.HOUR, "11.7", "14")
    assert line_what(skeins, GB) == "Yarn, oat: 100\u00a0g skeins"
    assert line_what(packs, GB) == "Yarn, oat: packs of 10 × 50\u00a0g"
    assert line_what(fee, GB) == "Card payment, on £297.00"
    assert line_what(making, GB) == "Making"
    assert (line_quantity(making, GB), line_unit(making, GB)) == ("11.70", "h")
    assert (line_rate(fee, GB), line_rate(making, GB)) == ("1.5%", "£14.00")


@pytest.mark.parametrize("kind", list(LineKind))
@pytest.mark.parametrize("unit", list(Unit))
def test_every_line_has_a_name_a_quantity_and_a_unit(kind: LineKind, unit: Unit) -> None:
    any_line = line(kind, unit, "2", "0.5")
    assert all(word(any_line, GB) for word in (line_what, line_quantity, line_unit, line_rate)) or (
        kind is LineKind.FEE
    )


def test_rows_and_rounds_are_called_so() -> None:
    worked = Pass(
        work=Work.ROW,
        number=12,
        colour="oat",
        stitch="hdc",
        stitches={"hdc": 98},
        starts=Edge.START,
        ends=Edge.FAR,
        height_cm=0.95,
    )
    assert pass_words(worked) == "row 12"
