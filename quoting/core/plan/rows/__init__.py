"""Blankets worked in rows."""
