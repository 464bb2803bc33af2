"""Jobs on pages."""
