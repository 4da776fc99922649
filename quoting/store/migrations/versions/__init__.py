"""The versions of the book's tables, each with what leads to it from the one before."""
