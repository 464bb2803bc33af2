"""Drawings to scale, made from numbers: SVG with a text alternative, one set of line styles, one key."""
