"""What every refusal must be: one short message in plain words, on one line."""

#: Words that only a programmer says.
PROGRAMMERS_WORDS = {
    "input",
    "invalid",
    "error",
    "null",
    "config",
    "submit",
    "exception",
    "parse",
    "string",
    "value error",
    "traceback",
    "nan",
}


def is_one_message(text: str) -> bool:
    """Whether this can stand at a field: one line, printable, closed by a full stop, not a wall of text."""
    words = {word.strip("“”.,:;()").lower() for word in _unquoted(text).split()}
    return text.isprintable() and 10 < len(text) < 300 and text.endswith(".") and not words & PROGRAMMERS_WORDS


def _unquoted(text: str) -> str:
    """The message without what the person herself wrote."""
    kept, inside = [], False
    for letter in text:
        inside = letter == "“" or (inside and letter != "”")
        if not inside:
            kept.append(letter)
    return "".join(kept)
