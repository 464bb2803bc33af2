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


def is_one_message(text: str, typed: str = "") -> bool:
    """Whether this can stand at a field: one line, printable, closed by a full stop, not a wall of text.

    typed: what the person wrote, where that may have quotation marks of its own; its words are not ours.
    """
    words = {word.strip("“”.,:;()").lower() for word in _unquoted(text).split()}
    ours = [each for each in words & PROGRAMMERS_WORDS if each not in typed.lower()]
    return text.isprintable() and 10 < len(text) < 300 and text.endswith(".") and not ours


def _unquoted(text: str) -> str:
    """The message without what the person herself wrote."""
    kept, inside = [], False
    for letter in text:
        inside = letter == "“" or (inside and letter != "”")
        if not inside:
            kept.append(letter)
    return "".join(kept)
