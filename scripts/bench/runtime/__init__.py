"""Measures the browser's Python: how soon it answers, how fast, and what it weighs."""
