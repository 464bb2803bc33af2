"""Edges cut through and seen from the side: hems and seams, layer by layer."""
