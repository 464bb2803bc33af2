"""A studio's own colour in place of the handbook's thread: for links, buttons and stitches, in light and in dark.

What it is written on is the palette's; the colour is darkened, or in the dark lightened, until words in it read on all
of them, and a pale tint of it stands where the handbook has a pale tint of its thread.
"""

import re

from scripts.tools.command_error import CommandError

WANTED = 7  # to 1: contrast of words, WCAG 2.2, 1.4.6
PALEST, TINT = 1, 12  # [%] of the colour in its pale tint: at least, and where words on the tint still read
SCHEMES = {"default": "000000", "slate": "ffffff"}  # what each goes towards, until it reads
PALE = ("thread-pale", "kind-odd")
GROUNDS = ("ground", "sheet", "caution-pale", "cloth-right", "cloth-wrong", "other-right", "other-wrong", "kind-even")
WORDS = ("ink", "ink-quiet", "caution")


def checked_colour(text: str) -> str:
    """Six figures in small letters. Raises: Trouble for what is no colour."""
    found = re.fullmatch(r"#?([0-9a-f]{6}|[0-9a-f]{3})", text.strip().lower(), re.ASCII)
    if not found:
        raise CommandError(
            f"“{text}” is no colour: --colour wants red, green and blue in six figures, such as #1d4270."
        )
    return found[1] if len(found[1]) == 6 else "".join(2 * each for each in found[1])


def recoloured(palette: str, colour: str) -> str:
    """The palette's style sheet with another thread. colour: six figures, as `checked_colour` gives them."""
    for scheme, end in SCHEMES.items():
        block = re.search(rf'\[data-md-color-scheme="{scheme}"\] \{{.*?\}}', palette, re.DOTALL)
        assert block, f"the palette has no colours for {scheme}"
        changed = block[0]
        for name, found in thread_and_tint(colours_in(changed), colour, end).items():
            changed = re.sub(rf"(--{name}): #\w+;", rf"\1: #{found};", changed)
        palette = palette.replace(block[0], changed)
    return palette


def colours_in(block: str) -> dict[str, str]:
    """Name → six figures, of a scheme's colours."""
    return dict(re.findall(r"--([\w-]+): #(\w{6});", block))


def thread_and_tint(scheme: dict[str, str], colour: str, end: str) -> dict[str, str]:
    """The colours of a scheme that change: the thread, and the tints of it."""
    tints = (mixed(scheme["sheet"], colour, share) for share in range(TINT, PALEST, -1))
    tint = next(
        (tint for tint in tints if all(contrast(scheme[word], tint) >= WANTED for word in WORDS)), scheme["sheet"]
    )
    grounds = [*(scheme[name] for name in GROUNDS), tint]
    darker = (mixed(colour, end, share) for share in range(101))
    thread = next(each for each in darker if all(contrast(each, ground) >= WANTED for ground in grounds))
    return {"thread": thread, **dict.fromkeys(PALE, tint)}


def mixed(colour: str, other: str, share: int) -> str:
    """So many hundredths of the other colour in this one."""
    pairs = zip(_parts(colour), _parts(other), strict=True)
    return "".join(f"{round(one + (two - one) * share / 100):02x}" for one, two in pairs)


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    shares = (part / 255 for part in _parts(colour))
    red, green, blue = (each / 12.92 if each <= 0.04045 else ((each + 0.055) / 1.055) ** 2.4 for each in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """How far two colours stand from each other, 1 to 21, as WCAG 2.2 defines it."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def _parts(colour: str) -> list[int]:
    return [int(colour[i : i + 2], 16) for i in (0, 2, 4)]
