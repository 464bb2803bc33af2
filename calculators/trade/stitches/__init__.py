"""Stitches as paths of a thread, over and under the cloth: by hand, and where the machine's two threads lock."""
