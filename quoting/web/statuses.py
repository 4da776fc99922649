"""Statuses of HTTP that pages answer with, by what they mean here."""

REFUSED = 422
"""What was sent is understood, and something in it is to be put right."""
