"""Calculators chained for one batch."""
