"""Folding: cloth with a right and a wrong side, what hands do to it, and how many layers lie where."""
