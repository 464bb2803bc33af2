"""What is kept or handed over as text: read with care, written one way only."""
