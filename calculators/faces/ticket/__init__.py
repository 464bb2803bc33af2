"""The work ticket on its page."""
