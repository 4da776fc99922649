"""All of it together, numbered and dated, and what is said of it."""
