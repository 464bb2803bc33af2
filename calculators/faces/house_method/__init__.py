"""The pages about the house method."""
