import io
import os
import sys

from calculators.faces.command_line import main

for stream in (sys.stdout, sys.stderr):
    if isinstance(stream, io.TextIOWrapper):
        stream.reconfigure(errors="backslashreplace")  # a terminal without − and “ shows their numbers, and goes on
try:
    code = main()
    sys.stdout.flush()
except BrokenPipeError:  # whoever was reading has read enough
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    code = 1
sys.exit(code)
