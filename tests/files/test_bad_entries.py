"""Every bad entry of a file is told with its place, what was read and what is wanted."""

import pytest

from quoting.intake import read_order_text, read_workshop_text

ROWS = '{ colour = "teal", rows = 1 }'
STRIPE_ROWS = "blanket.sections.1.stripes.1.rows"


@pytest.mark.parametrize(
    ("rows", "code"),
    [
        ("0", "too-small"),
        ("-3", "too-small"),
        ("10001", "too-large"),
        ("99999999999999999999", "too-many-digits"),
        ("true", "wrong-type"),
        ("1.0", "wrong-type"),
        ("'1'", "wrong-type"),
        ("[]", "wrong-type"),
        ("{}", "wrong-type"),
        ("2027-03-20", "wrong-type"),
    ],
)
def test_a_count_is_a_whole_number_within_its_limits(order_mistakes, rows, code):
    found = order_mistakes((ROWS, f'{{ colour = "teal", rows = {rows} }}'))
    assert {place: mistake.code for place, mistake in found.items()} == {STRIPE_ROWS: code}


@pytest.mark.parametrize(
    ("width", "code"),
    [
        ('"0 cm"', "not-above"),
        ('"-80 cm"', "not-above"),
        ('"900 m"', "too-large"),
        ('"inf cm"', "not-finite"),
        ('"nan"', "not-finite"),
        ('"80"', "missing-unit"),
        ("80", "missing-unit"),
        ("80.5", "missing-unit"),
        ('"80 g"', "unknown-unit"),
        ('"1.000,5 cm"', "not-a-measure"),
        ('"wide"', "not-a-measure"),
        ("true", "wrong-type"),
        ('"' + "8" * 100_000 + ' cm"', "too-long"),
    ],
)
def test_a_measure_has_a_number_and_a_unit(order_mistakes, width, code):
    found = order_mistakes(('"80 cm"', width))
    assert {place: mistake.code for place, mistake in found.items()} == {"blanket.width": code}


@pytest.mark.parametrize(
    ("share", "code"),
    [
        ("inf", "not-finite"),
        ("nan", "not-finite"),
        ("1e400", "not-finite"),
        ("1e99999999999999999999", "not-finite"),
        ("-1", "too-small"),
        ("2000000.0", "too-large"),
        ("false", "wrong-type"),
        ('"1"', "wrong-type"),
    ],
)
def test_a_number_is_finite_and_within_its_limits(order_mistakes, share, code):
    found = order_mistakes(("share = 1 ", f"share = {share} "))
    assert found["blanket.sections.1.share"].code == code


@pytest.mark.parametrize("price", ["185.00", "185", "true", "inf"])
def test_money_is_text_never_a_number(order_mistakes, price):
    (only,) = order_mistakes(('"185.00"', price)).values()
    assert (only.place, only.code) == ("price.given", "wrong-type")
    assert only.facts == {"read": price.replace("inf", "Infinity"), "wanted": "money-text"}


@pytest.mark.parametrize(
    ("old", "new", "place", "code", "nearest"),
    [
        ('colour = "rust"', 'colour = "rusty"', "sections.1.stripes.2.colour", "colour", "rust"),
        ('yarn = "moor aran"\nf', 'yarn = "moor arn"\nf', "yarn", "yarn", "moor aran"),
        ('stitch = "hdc"', 'stitch = "hcd"', "stitch", "stitch", "hdc"),
        ('stitch = "hdc"', 'stitch = "mos"', "stitch", "stitch", "moss"),
        ('stitch = "sc"', 'stitch = "shell"', "border.1.stitch", "stitch", None),
        (
            ', colour = "oat" }\n\n',
            ', colour = "oak" }\n\n',
            "colours.cream.colour",
            "colour",
            "oat",
        ),
    ],
)
def test_a_name_that_the_workshop_has_not_is_told_with_the_nearest(
    order_mistakes, old, new, place, code, nearest
):
    if place.startswith("colours"):
        edits = (old, new), ('colour = "rust"', 'colour = "cream"')
    else:
        edits = ((old, new),)
    (only,) = order_mistakes(*edits).values()
    assert (only.place, only.code) == (f"blanket.{place}", f"unknown-{code}")
    assert only.facts["nearest"] == nearest
    assert only.facts["read"] in new


def test_a_section_has_stripes(order_mistakes):
    edit = ("[[blanket.border]]", "[[blanket.sections]]\nstripes = []\n\n[[blanket.border]]")
    (only,) = order_mistakes(edit).values()
    assert (only.place, only.code) == ("blanket.sections.2.stripes", "missing")


def test_a_section_cannot_leave_its_stripes_out(order_mistakes):
    edit = ("[[blanket.border]]", "[[blanket.sections]]\nshare = 1\n\n[[blanket.border]]")
    (only,) = order_mistakes(edit).values()
    assert (only.place, only.code) == ("blanket.sections.2.stripes", "missing")


def test_shares_are_not_all_zero(order_mistakes):
    (only,) = order_mistakes(("share = 1 ", "share = 0 ")).values()
    assert (only.place, only.code) == ("blanket.sections", "no-shares")


def test_a_section_has_a_share_or_repeats_not_both(order_mistakes):
    (only,) = order_mistakes(("share = 1 ", "share = 1\nrepeats = 3 ")).values()
    assert (only.place, only.code) == ("blanket.sections.1.repeats", "share-and-repeats")


@pytest.mark.parametrize("number", [10_000, 20_000])
def test_so_many_stripes_are_too_many(order_mistakes, number):
    stripes = ", ".join(['{ colour = "oat" }'] * number)
    (only,) = order_mistakes(("last_rows = []", f"last_rows = [{stripes}]")).values()
    assert (only.place, only.code) == ("blanket.last_rows", "too-many")
    assert only.facts["read"] == number


def test_text_has_its_limits(order_mistakes):
    long = "a" * 100_000
    (only,) = order_mistakes(("Cot blanket in moorland stripes", long)).values()
    assert (only.place, only.code) == ("order.title", "too-long")


@pytest.mark.parametrize("escape", ["\\u0007", "\\u0000", "\\u001b", "\\u202e"])
def test_text_has_no_control_characters(order_mistakes, escape):
    (only,) = order_mistakes(("Rosalind Quill", f"Rosalind{escape}Quill")).values()
    assert (only.place, only.code) == ("order.buyer", "control-character")


def test_a_currency_is_one_that_exists(order_mistakes, workshop_mistakes):
    (only,) = order_mistakes(('pays_in = "GBP"', 'pays_in = "GPB"')).values()
    assert (only.place, only.code) == ("order.pays_in", "unknown-currency")
    (only,) = workshop_mistakes(('currency = "GBP"', 'currency = "GPB"')).values()
    assert (only.place, only.code) == ("workshop.currency", "unknown-currency")
    (only,) = workshop_mistakes(("EUR =", "EUZ =")).values()
    assert (only.place, only.code) == ("exchange.EUZ", "unknown-currency")


def test_a_buyer_pays_in_a_currency_that_there_is_a_rate_for(order_mistakes):
    (only,) = order_mistakes(('pays_in = "GBP"', 'pays_in = "USD"')).values()
    assert (only.place, only.code) == ("order.pays_in", "no-rate")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [
        ("width =", "widht =", "blanket.width"),
        ("for_baby =", "for_babby =", "order.for_baby"),
        ("[[extras]]", "[[extra]]", "extras"),
        ('colour = "teal"', 'color = "teal"', "blanket.sections.1.stripes.1.colour"),
        ("Rounds = 1".lower(), "Rounds = 1", "blanket.border.1.rounds"),
        ("discount =", "discuont =", "price.discount"),
    ],
)
def test_a_misspelt_key_is_told_with_the_right_one(order_mistakes, old, new, place):
    found = order_mistakes((old, new))
    (unknown,) = (mistake for mistake in found.values() if mistake.code == "unknown-key")
    assert unknown.facts["nearest"] == place.rpartition(".")[2]
    assert unknown.place.rpartition(".")[0] == place.rpartition(".")[0]
    others = {mistake.place: mistake.code for mistake in found.values() if mistake != unknown}
    assert others in ({}, {place: "missing"})


@pytest.mark.parametrize(
    ("old", "new", "place", "nearest"),
    [
        ('stop_at = "repeat"', 'stop_at = "repeats"', "blanket.stop_at", "repeat"),
        ('corner = "chain"', 'corner = "one xtra"', "blanket.border.1.corner", "one extra"),
        ('terms = "US"', 'terms = "us"', "terms", "US"),
        ('construction = "rows"', 'construction = "spiral"', "blanket.construction", None),
    ],
)
def test_a_choice_is_one_of_its_words(order_mistakes, old, new, place, nearest):
    (only,) = order_mistakes((old, new)).values()
    assert (only.place, only.code) == (place, "not-one-of")
    assert only.facts["nearest"] == nearest
    assert only.facts["read"] not in only.facts["known"]


@pytest.mark.parametrize("day", ['"2027-03-20"', "2027-03-20T12:00:00", "12:00:00", "20270320"])
def test_a_day_is_a_local_date(order_mistakes, day):
    (only,) = order_mistakes(("2027-03-20", day)).values()
    assert (only.place, only.code) == ("order.wanted_by", "wrong-type")
    assert only.facts["wanted"] == "date"


@pytest.mark.parametrize(
    ("old", "new", "place", "code"),
    [
        ('locale = "en_GB"', 'locale = "English!"', "workshop.locale", "not-a-locale"),
        (
            "tension =",
            "allowance = 0.1\ntension =",
            "workshop.allowance",
            "confidence-or-allowance",
        ),
        (
            "hdc = false, dc = true",
            "hcd = false",
            "workshop.counts_turning_chain.hcd",
            "not-one-of",
        ),
        ("hdc = false, dc", "hdc = 0, dc", "workshop.counts_turning_chain.hdc", "wrong-type"),
        ('oat = "#d9c9a3"', 'oat = "beige"', "yarns.1.colours.oat", "not-a-colour-code"),
        (
            'colour = "oat", grams',
            'colour = "oak", grams',
            "yarns.1.stock.1.colour",
            "unknown-colour",
        ),
        ("category = 4", "category = 9", "yarns.1.category", "unknown-category"),
        ("grams = 400", "grams = 0", "yarns.1.put_ups.2.grams", "not-above"),
        ("metres = 800", 'metres = "800 g"', "yarns.1.put_ups.2.metres", "unknown-unit"),
        ('price = "4.60"', "price = 4.60", "yarns.1.put_ups.1.price", "wrong-type"),
        ('name = "moss"', 'name = "htr"', "patterns.1.name", "basic-stitch-name"),
        ('name = "moss"', 'name = "dc"', "patterns.1.name", "basic-stitch-name"),
        ('like = "sc"', 'like = "htr"', "patterns.1.like", "other-vocabulary"),
        ('yarn = "moor aran"', 'yarn = "moor"', "swatches.1.yarn", "unknown-yarn"),
        ('"12.8 cm"', '"12.8"', "swatches.1.gauge.width", "missing-unit"),
        ('weight = "25 g"', 'weight = "25 cm"', "swatches.1.piece.weight", "unknown-unit"),
        (
            "piece = {",
            "run = {stitches = 20, length = '176 cm'}\npiece = {",
            "swatches.1.piece",
            "piece-or-run",
        ),
        ("minutes = 27.5", "minutes = 0", "timings.1.minutes", "not-above"),
        ("turn = 0.1", "turn = [0.1, true]", "minutes.turn.2", "wrong-type"),
        ("turn = 0.1", "turn = []", "minutes.turn", "missing"),
        ("rip_back = 0.0", "rip_back = [0.0]", "minutes.rip_back", "wrong-type"),
        ("margin = 0.15", "margin = 0.15\nmarkup = 0.18", "price.markup", "one-target"),
        ("margin = 0.15", "", "price.margin", "one-target"),
        (
            'round_up_to = "1.00"',
            'round_up_to = "0.001"',
            "price.round_up_to",
            "not-whole-minor-units",
        ),
        ("{ share = 0.5 }", "{ share = 0.5, yarn = true }", "price.deposit.share", "share-or-yarn"),
        ('on = "total"', 'on = "all"', "fees.1.on", "not-one-of"),
        ('up_to = "2 kg"', 'up_to = "2 m"', "delivery.bands.1.up_to", "unknown-unit"),
        ("2026-12-25]", '"2026-12-25"]', "calendar.days_off.2", "wrong-type"),
        ('rate = "1.17"', 'rate = "0"', "exchange.EUR.rate", "not-above"),
        ("[pay]", "[paid]", "pay", "missing"),
    ],
)
def test_a_bad_entry_of_the_workshop_is_told_at_its_place(workshop_mistakes, old, new, place, code):
    found = workshop_mistakes((old, new))
    assert found[place].code == code
    assert len(found) == 1 or new == "[paid]"


def test_all_mistakes_are_told_at_once_and_nothing_that_follows_from_them(order_mistakes):
    found = order_mistakes(
        ('title = "Cot blanket in moorland stripes"', "title = 7"),
        ("for_baby = true", 'for_baby = "yes"'),
        ('"80 cm"', "80"),
        (ROWS, '{ colour = "teel", rows = 0 }'),
        ('{ colour = "rust", rows = 1 }', "{ rows = 1 }"),
        ('stitch = "sc"', 'stitch = "shel"'),
        ("rounds = 1", "rounds = true"),
        ('cost = "3.20"', 'cots = "3.20"'),
        ("discount = 0.05", "discount = 5"),
    )
    assert {place: mistake.code for place, mistake in found.items()} == {
        "order.title": "wrong-type",
        "order.for_baby": "wrong-type",
        "blanket.width": "missing-unit",
        STRIPE_ROWS: "too-small",
        "blanket.sections.1.stripes.1.colour": "unknown-colour",
        "blanket.sections.1.stripes.2.colour": "missing",
        "blanket.border.1.stitch": "unknown-stitch",
        "blanket.border.1.rounds": "wrong-type",
        "extras.1.cots": "unknown-key",
        "price.discount": "too-large",
    }


def test_an_empty_file_lacks_its_tables_and_no_more(mistakes, workshop):
    assert set(mistakes(lambda: read_order_text("", workshop))) == {"order", "blanket"}
    wanted = {"workshop", "yarns", "timings", "pay", "price"}
    assert set(mistakes(lambda: read_workshop_text(""))) == wanted
