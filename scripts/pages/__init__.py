"""What puts calculators and live numbers into the pages."""
