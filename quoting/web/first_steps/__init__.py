"""First steps: one question at a time, from nothing to a workshop that a quote can rest on."""
