"""The calculators from a terminal: ``python -m calculators NAME field=value … [--json]``."""

import argparse
import json
import sys
from collections.abc import Sequence

from calculators.asking.answering import Asking, answer, filled
from calculators.asking.declaration import Calculator, Field, InvalidInput
from calculators.catalogue import calculator_named, catalogue
from calculators.faces.page.answer_html import spoken_text
from calculators.faces.page.plain import plain_answer, refusals
from calculators.values.measure import quote

BAD_VALUE = 2


def main(words: Sequence[str] | None = None) -> int:
    """Run one command line; returns the exit code."""
    parser = _parser()
    options = parser.parse_intermixed_args(words)
    if options.name is None:
        print("\n".join(f"{each.name:20} {each.purpose}" for each in catalogue().values()))
        return 0
    try:
        calculator = calculator_named(options.name)
    except KeyError as unknown:
        return _refuse({"calculator": unknown.args[0]}, options.json)
    if options.help:
        print(described(calculator))
        return 0
    typed = dict(pair.partition("=")[::2] for pair in options.values)
    if loose := [pair for pair in options.values if "=" not in pair]:
        first = calculator.fields[0]
        sample = f'{first.name}="{Asking({}).text(first)}"'
        return _refuse(
            {word: f"“{quote(word)}” is not field=value. Write, for instance, {sample}." for word in loose},
            options.json,
        )
    names = [pair.partition("=")[0] for pair in options.values]
    if twice := {name for name in names if names.count(name) > 1}:
        return _refuse(
            {name: f"“{quote(name)}” is given more than once. Give it once." for name in names if name in twice},
            options.json,
        )
    asking = Asking(typed, wanted_ruler=options.ruler)
    try:
        _ = asking.ruler
    except ValueError as unknown:
        return _refuse({"ruler": str(unknown)}, options.json)
    return _answer(calculator, asking, options.json)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m calculators", add_help=False, description="Work out one calculator."
    )
    parser.add_argument("name", nargs="?", help="a calculator; without one, all are listed")
    parser.add_argument("values", nargs="*", metavar="field=value")
    parser.add_argument("--json", action="store_true", help="plain data, lengths in millimetres")
    parser.add_argument(
        "--ruler", default="", help='the ruler in hand: cm, in, or with its smallest division, such as "in 1/32"'
    )
    parser.add_argument("-h", "--help", action="store_true", help="what a calculator asks and answers")
    return parser


def _answer(calculator: Calculator, asking: Asking, as_json: bool) -> int:
    try:
        print(json.dumps(plain_answer(calculator, asking)) if as_json else spoken(calculator, asking))
    except InvalidInput as error:
        return _refuse(refusals(error, calculator, asking), as_json)
    return 0


def _refuse(sentences: dict[str, str], as_json: bool) -> int:
    print("\n".join(sentences.values()), file=sys.stderr)
    if as_json:
        print(json.dumps({"errors": sentences}))
    return BAD_VALUE


def spoken(calculator: Calculator, asking: Asking) -> str:
    """The answer as lines of text: the sentence, every result, the notes."""
    reply = answer(calculator, asking)
    lines = [spoken_text(calculator, reply, asking.ruler), ""]
    for result in calculator.results:
        value = reply.results[result.name]
        if value is None:
            lines.append(f"{result.label}: —")
            continue
        if (table := result.kind.table) is not None:
            lines.append(f"{result.label}:")
            lines += [
                "  " + " | ".join(cells)
                for cells in (
                    [c.label for c in table.read],
                    *(table.cells(row, asking.ruler) for row in value),
                )
            ]
        else:
            lines.append(f"{result.label}: {result.kind.show(value, asking.ruler)}")
    return "\n".join(lines + [""] + [filled(note, calculator, asking.ruler) for note in reply.notes])


def _choices(field: Field) -> str:
    return f" One of: {', '.join(field.kind.choices)}." if field.kind.choices else ""


def described(calculator: Calculator) -> str:
    """What a calculator asks and answers, as help text."""
    asking = Asking({})
    fields = [
        f"  {f.name:16} {f.label}. {f.help}{_choices(f)} [{asking.text(f) or 'may be left out'}]"
        for f in calculator.fields
    ]
    results = [f"  {r.name:16} {r.label}. {r.meaning}" for r in calculator.results]
    return "\n".join(
        [
            f"{calculator.name}: {calculator.purpose}",
            "",
            "Fields (in brackets what is used when left out):",
            *fields,
            "",
            "Results:",
            *results,
        ]
    )
