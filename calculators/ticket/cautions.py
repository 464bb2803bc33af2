"""Cautions of a ticket: the usual ones, told again where the work can hurt."""

from calculators.trade.trade_rules import brief

IRON, BLADE, PINS, NEEDLE = brief("iron"), brief("blades"), brief("pins-counted"), brief("needle")
DEFER = "The maker’s manual of each tool and the rules of your own workroom and country come first."
