"""What a page shows of a calculator."""
