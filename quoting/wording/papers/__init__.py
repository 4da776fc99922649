"""The papers of an order in words: what a buyer reads in her language, the maker's in hers."""

from quoting.wording.papers.sheets import Sheet, sheet_paper, sheet_words

__all__ = ["Sheet", "sheet_paper", "sheet_words"]
