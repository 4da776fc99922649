"""The papers of an order in words: what a buyer reads in her language, the maker's in hers."""

from quoting.wording.papers.order_papers import OrderPaper, order_paper, order_paper_words

__all__ = ["OrderPaper", "order_paper", "order_paper_words"]
