"""Numbers by chance that a calculator's blanks let through, for tests that try many."""

from fractions import Fraction

from calculators.asking.answering import Asking
from calculators.values.kinds import Choice, Count, Length, Number, YesNo
from calculators.values.measure import parse_length, show_exactly

RULERS = ["", "cm", "mm 1/2", "in 1/32", "in 1/2"]


def any_text(field, chance):
    """A text for a blank: a length within a tenth of the house's, or something else that its kind lets through."""
    kind = field.kind
    if isinstance(kind, Length):
        usual = Asking({}).text(field)
        middle = parse_length(usual) if usual else max(kind.least, Fraction(20))
        length = Fraction(chance.uniform(0.9, 1.1)).limit_denominator(chance.choice([1, 10, 16, 97])) * middle
        return show_exactly(length, chance.choice(["mm", "cm", "m", "in"]))
    if isinstance(kind, Number):
        return f"{chance.uniform(float(kind.least), float(kind.most)):.{chance.choice([0, 1, 3])}f}"
    if isinstance(kind, Count):
        return str(chance.randint(kind.least, min(kind.most, kind.least + 30)))
    if isinstance(kind, Choice):
        return chance.choice(sorted(kind.options))
    return chance.choice(["yes", "no"]) if isinstance(kind, YesNo) else None


def any_numbers(calculator, chance):
    """What somebody may have typed: most of the blanks filled in."""
    texts = {field.name: any_text(field, chance) for field in calculator.fields if chance.random() < 0.7}
    return {field: text for field, text in texts.items() if text is not None}
