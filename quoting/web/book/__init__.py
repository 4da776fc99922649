"""The orders of a book: their list, and the worktable that keeps what is typed."""
