"""Papers as files: a PDF, and a plain text to paste into a message."""
