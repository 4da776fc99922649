"""Codes, facts and figures to sentences, amounts and labels, in the workshop's locale."""

from quoting.wording.bodies import body_words
from quoting.wording.book_mistakes import BOOK_FAILURES
from quoting.wording.calmer import calmer_words
from quoting.wording.categories import category_words
from quoting.wording.cautions import caution_sentence
from quoting.wording.chart_sentences import earnings_sentence, parts_sentence, sizes_sentence
from quoting.wording.closing import (
    apart_words,
    body_counts_words,
    closed_words,
    count_figures,
    counts_words,
    fabric_words,
    longer_by_words,
    neighbour_words,
    off_sentence,
    off_words,
)
from quoting.wording.comparing import change_words, refusal_words, rule_words, verdict
from quoting.wording.confirmed import confirming_digits
from quoting.wording.drawing import (
    band_name,
    drawing_description,
    drawing_title,
    in_part,
    layout_name,
    strand_place,
)
from quoting.wording.exchange import exchange_rate, exchange_words
from quoting.wording.foundation import foundation_words
from quoting.wording.lines import (
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    sold_as,
    yarn_line_parts,
)
from quoting.wording.locale_names import (
    OFFERED_LOCALES,
    language_names,
    locale_names,
    usual_currency,
)
from quoting.wording.locales import is_locale
from quoting.wording.mistakes import mistake_sentence
from quoting.wording.motif_words import SHAPES, join_choice, join_words, shape_words
from quoting.wording.offer import SaidOffer, number_words, people_texts, say_offer
from quoting.wording.offer_paper import offer_paper, told_blocks
from quoting.wording.phrases import listed
from quoting.wording.queue import ahead_words, turn_words, weeks_description, wish_words
from quoting.wording.row_guide import (
    begins_words,
    each_part_words,
    guide_sentences,
    notes_sentence,
    sewn_sentence,
)
from quoting.wording.rows_and_edges import (
    body_heading,
    body_pass,
    edge_name,
    edge_side,
    edge_words,
    pass_words,
    passes_label,
    point_words,
    rows_heading,
)
from quoting.wording.sheet_formats import grouped_as, sheet_day, sheet_money, sheet_number
from quoting.wording.speech import FILE_SPEECH, Speech, speech_of
from quoting.wording.suggested_words import suggested_words
from quoting.wording.track_record import (
    bias_sentences,
    coverage_sentence,
    more_or_less,
    outturn_words,
    widening_sentence,
)
from quoting.wording.trade_words import (
    AS_USUAL,
    ended_words,
    guess_words,
    part_words,
    stage_words,
    stitch_names_meant,
    sureness_words,
    task_words,
    timed_words,
    work_words,
)
from quoting.wording.waiting import wait_words
from quoting.wording.widened import hours_widened_words, ranges_words, yarn_widened_words
from quoting.wording.wishes import earning_short, price_low, ready_late
from quoting.wording.workbook_notes import (
    COMPARISON_FOLLOWS,
    COMPARISON_SOURCES,
    NO_PRICE,
    NO_PRICE_OF_SIZE,
    NO_SIZE_NAMED,
    QUOTE_FOLLOWS,
    quote_sources,
)

__all__ = [
    "AS_USUAL",
    "BOOK_FAILURES",
    "COMPARISON_FOLLOWS",
    "COMPARISON_SOURCES",
    "FILE_SPEECH",
    "NO_PRICE",
    "NO_PRICE_OF_SIZE",
    "NO_SIZE_NAMED",
    "OFFERED_LOCALES",
    "QUOTE_FOLLOWS",
    "SHAPES",
    "SaidOffer",
    "Speech",
    "ahead_words",
    "apart_words",
    "band_name",
    "begins_words",
    "bias_sentences",
    "body_counts_words",
    "body_heading",
    "body_pass",
    "body_words",
    "calmer_words",
    "category_words",
    "caution_sentence",
    "change_words",
    "closed_words",
    "confirming_digits",
    "count_figures",
    "counts_words",
    "coverage_sentence",
    "drawing_description",
    "drawing_title",
    "each_part_words",
    "earning_short",
    "earnings_sentence",
    "edge_name",
    "edge_side",
    "edge_words",
    "ended_words",
    "exchange_rate",
    "exchange_words",
    "fabric_words",
    "foundation_words",
    "grouped_as",
    "guess_words",
    "guide_sentences",
    "hours_widened_words",
    "in_part",
    "is_locale",
    "join_choice",
    "join_words",
    "language_names",
    "layout_name",
    "line_quantity",
    "line_rate",
    "line_unit",
    "line_what",
    "listed",
    "locale_names",
    "longer_by_words",
    "mistake_sentence",
    "more_or_less",
    "neighbour_words",
    "notes_sentence",
    "number_words",
    "off_sentence",
    "off_words",
    "offer_paper",
    "outturn_words",
    "part_words",
    "parts_sentence",
    "pass_words",
    "passes_label",
    "people_texts",
    "point_words",
    "price_low",
    "quote_sources",
    "ranges_words",
    "ready_late",
    "refusal_words",
    "rows_heading",
    "rule_words",
    "say_offer",
    "sewn_sentence",
    "shape_words",
    "sheet_day",
    "sheet_money",
    "sheet_number",
    "sizes_sentence",
    "sold_as",
    "speech_of",
    "stage_words",
    "stitch_names_meant",
    "strand_place",
    "suggested_words",
    "sureness_words",
    "task_words",
    "timed_words",
    "told_blocks",
    "turn_words",
    "usual_currency",
    "verdict",
    "wait_words",
    "weeks_description",
    "widening_sentence",
    "wish_words",
    "work_words",
    "yarn_line_parts",
    "yarn_widened_words",
]
