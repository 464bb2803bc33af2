"""Whether any text, typed or pasted into whatever blank, breaks a calculator or keeps it busy.

    python scripts/bench/hostile_values.py                   100,000 texts; a table by kind of blank
      --values 5000 --seed 7                                 so many; others

Every field of every calculator is asked in turn as a page asks it. A text is at fault when Python fails on it, when it
is refused in anything but one clear sentence, or when refusing it (of a text that is taken, reading it and writing it
out) costs more than 50 ms of this process's own time, at the best of three. What an answer costs is told, not judged.
"""

import argparse
import json
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import islice
from pathlib import Path
from random import Random

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from calculators.asking.answering import Asking, read, written
from calculators.asking.declaration import Calculator, Field
from calculators.asking.house_method import RULER_STEPS
from calculators.asking.site_method import site_method
from calculators.catalogue import catalogue
from calculators.faces.browser import replies
from scripts.tools.command_error import run_main
from tests.hostile_texts import hostile_text
from tests.sentences import is_one_message

VALUES, LIMIT, TRIES = 100_000, 0.05, 3  # LIMIT [s]
RULERS = [f"{unit} {step}" for unit, steps in RULER_STEPS.items() for step in steps]
REPLIES = 3  # after so many of an answer that becomes better and better it is let be
SHOWN = 60  # characters of a text


@dataclass
class OfOneKind:
    """What was found with one kind of blank. slowest: [s], and of which text."""

    texts: int = 0
    refused: int = 0
    slowest: tuple[float, str] = (0.0, "")
    slowest_answer: float = 0.0


@dataclass
class Found:
    """What was found with all of them."""

    kinds: dict[str, OfOneKind] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)


def spent(act: Callable[[], object]) -> float:
    """Time of this process alone [s]."""
    begun = time.process_time()
    act()
    return time.process_time() - begun


def try_out(
    found: Found,
    calculator: Calculator,
    asked: Field,
    text: str,
    made_by: str = "",
    ruler: str = "",
    limit: float = LIMIT,
) -> None:
    """Ask a calculator with a text in one of its blanks, as a page asks it."""
    kind = type(asked.kind).__name__
    place = f"{calculator.name}, {asked.name} ({kind}, {made_by}, {len(text)} characters): {ascii(text[:SHOWN])}"
    question = {"ask": "calculator", "calculator": calculator.name, "given": {}, "typed": {asked.name: text}}
    request = json.dumps({**question, "ruler": ruler})
    count = found.kinds.setdefault(kind, OfOneKind())
    count.texts += 1
    first: dict[str, object] = {}

    def asks() -> None:
        first.update(json.loads(next(replies(request))))

    def reads() -> None:
        asking = Asking({asked.name: text}, wanted_ruler=ruler)
        read(calculator, asking)
        written(calculator, asking)

    try:
        took = spent(asks)
        refusals = first.get("refusals")
        if isinstance(refusals, dict):
            count.refused += 1
            judged = asks
            unclear = [each for each in refusals.values() if not is_one_message(each, text)]
            found.faults += [f"{place}: not one clear sentence: {each!a}" for each in unclear]
        else:
            count.slowest_answer = max(count.slowest_answer, took)
            judged = reads
            took = spent(reads)
            for _ in islice(replies(request), REPLIES):
                pass
        if took > limit:  # or the machine did something else
            took = min(took, *(spent(judged) for _ in range(TRIES - 1)))
    except Exception as problem:
        found.faults.append(f"{place}: {problem!r}")
        return
    count.slowest = max(count.slowest, (took, place))
    if took > limit:
        found.faults.append(f"{place}: {took * 1000:.0f} ms")


def tried(values: int, seed: int, limit: float = LIMIT) -> Found:
    """Try so many texts, in each blank in turn. limit: how long one may take [s]."""
    chance, found = Random(seed), Found()
    blanks = [(calculator, each) for calculator in catalogue().values() for each in calculator.fields]
    for number in range(values):
        calculator, asked = blanks[number % len(blanks)]
        made_by, text = hostile_text(asked.kind, chance)
        try_out(found, calculator, asked, text, made_by, chance.choice(RULERS), limit)
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--values", type=int, default=VALUES, help=f"how many texts ({VALUES})")
    parser.add_argument("--seed", type=int, default=0)
    asked = parser.parse_args()
    site_method()
    begun = time.process_time()
    found = tried(asked.values, asked.seed)
    print(f"{'kind of blank':<16}{'texts':>9}{'refused':>9}{'slowest [ms]':>14}{'slowest answer [ms]':>21}")
    for kind, each in sorted(found.kinds.items()):
        print(
            f"{kind:<16}{each.texts:>9}{each.refused:>9}{each.slowest[0] * 1000:>14.1f}"
            f"{each.slowest_answer * 1000:>21.0f}"
        )
    slowest, place = max(each.slowest for each in found.kinds.values())
    print(f"{asked.values} texts in {time.process_time() - begun:.0f} s of this process, {len(found.faults)} at fault")
    print(f"slowest: {slowest * 1000:.1f} ms: {place}")
    print(*found.faults[:50], sep="\n")
    return 1 if found.faults else 0


if __name__ == "__main__":
    run_main(main)
