"""The trade's arithmetic: no HTML, no typed text."""
