"""What a calculator is, what several ask alike, and the one path from what was typed to an answer."""
