"""Searches for the best plan, in whole units; a glossary to the literature is in the guide."""
