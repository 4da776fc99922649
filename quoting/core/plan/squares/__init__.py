"""Motifs that are joined."""
