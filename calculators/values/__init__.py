"""Kinds of value: numbers, lengths, time and money as a workroom writes them, and sentences with them."""
