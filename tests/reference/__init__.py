"""Values from outside as data, for every Python that runs the calculators; what reads them is shared with the build."""

from scripts.checked.cases import Case, cases, faults, too_few, why_fewer

__all__ = ["Case", "cases", "faults", "too_few", "why_fewer"]
