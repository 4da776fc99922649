"""How each kind of cell looks: paper white, ink, one quiet grey."""

from __future__ import annotations

from functools import cache

from openpyxl.styles import Alignment, Border, Font, NamedStyle, PatternFill, Protection, Side

from exports.sheets.cells import Cell, Look

INK, GREY, PALE = "FF222222", "FF8C8C8C", "FFF3F3F3"
FONT = "Calibri"

HEADINGS = frozenset({Look.HEADING, Look.ASIDE_HEADING, Look.FIGURE_HEADING})
FIGURES = frozenset({Look.PLAIN, Look.INPUT, Look.COUNTED, Look.QUOTED, Look.TOTAL, Look.STRONG})
BOXED = frozenset({Look.INPUT, Look.WRITTEN, Look.INPUT_KEY})
WRAPPED = frozenset({Look.LABEL, Look.WRITTEN, Look.ASIDE, Look.FOOT, Look.PROSE})
_TITLES = frozenset({Look.BLOCK, Look.TITLE, Look.STATE, Look.FLAG})
_BOLD = HEADINGS | _TITLES | {Look.TOTAL, Look.STRONG, Look.FOOT}

_LINE = Side(style="thin", color=GREY)
_BOX = Border(left=_LINE, right=_LINE, top=_LINE, bottom=_LINE)
_UNDER, _OVER = Border(bottom=_LINE), Border(top=_LINE)
_SOFT_FILL = PatternFill("solid", fgColor=PALE)
_BARE, _NO_FILL, _LOCKED = Border(), PatternFill(), Protection()


def style_of(look: Look) -> NamedStyle:
    """Return the named style of a look, which bears its name."""
    return NamedStyle(
        name=look.value,
        font=_font(look),
        fill=_SOFT_FILL if look in BOXED else _NO_FILL,
        border=_border(look),
        alignment=_alignment(look),
        protection=_LOCKED,
    )


def _border(look: Look) -> Border:
    if look in BOXED:
        return _BOX
    if look in (Look.TOTAL, Look.FOOT):
        return _OVER
    return _UNDER if look in HEADINGS else _BARE


@cache
def _font(look: Look) -> Font:
    return Font(
        name=FONT,
        size={Look.TITLE: 16, Look.BLOCK: 12}.get(look, 11),
        bold=look in _BOLD,
        italic=look in (Look.COUNTED, Look.COUNTED_KEY, Look.QUOTED),
        color=INK,
    )


@cache
def _alignment(look: Look) -> Alignment:
    aside = 1 if look in (Look.ASIDE, Look.ASIDE_HEADING) else 0
    if look in HEADINGS:
        side = "right" if look is Look.FIGURE_HEADING else "left"
        return Alignment(horizontal=side, vertical="bottom", wrap_text=True, indent=aside)
    if look in FIGURES:
        return Alignment(horizontal="right", vertical="top")
    wraps = look in WRAPPED | {Look.FLAG}
    return Alignment(horizontal="left", vertical="top", wrap_text=wraps, indent=aside)


def fill_of(colour_code: str) -> PatternFill:
    """Return the fill of a yarn's colour, given as `#rrggbb`."""
    return PatternFill("solid", fgColor="FF" + colour_code.lstrip("#").upper())


def look_beside(cell: Cell, before: Cell | None) -> Look:
    """Return the look of a cell: a word just right of a figure keeps a little away from it."""
    if before is None:
        return cell.look
    if cell.look is Look.LABEL and before.look in FIGURES:
        return Look.ASIDE
    if cell.look is Look.HEADING and before.look is Look.FIGURE_HEADING:
        return Look.ASIDE_HEADING
    return cell.look
