"""Numbers by chance that a calculator's blanks let through, for tests that try many."""

from calculators.asking.answering import Asking

RULERS = ["", "cm", "mm 1/2", "in 1/32", "in 1/2"]


def any_text(field, chance):
    """A text for a blank that its kind lets through, near to the house's where that makes sense."""
    usual = Asking({}).text(field)
    samples = field.kind.samples(chance, usual)
    return samples[0] if usual and chance.random() < 0.6 else chance.choice(samples)  # the nearest stands first


def any_numbers(calculator, chance):
    """What somebody may have typed: most of the blanks filled in."""
    return {field.name: any_text(field, chance) for field in calculator.fields if chance.random() < 0.7}
