"""What a house method may hold, how it is checked, changed, compared and written: everything but how it looks."""
