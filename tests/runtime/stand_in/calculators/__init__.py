"""Stands in for the calculators where the machinery around them is tested."""
