"""The one error that a person at the terminal should see: a sentence, never a traceback."""

import sys
from collections.abc import Callable


class CommandError(Exception):
    """Something the person running a script can put right; its text is the whole message."""


def why(problem: OSError) -> str:
    """What the system says of a file that it does not give or take, to stand within a sentence."""
    return (problem.strerror or str(problem)).lower()


def run_main(main: Callable[[], int]) -> None:
    """Run a script's main function and end the process with its exit code.

    A `CommandError` is printed as its sentence on the error stream and ends with code 1.
    """
    try:
        code = main()
    except CommandError as error:
        print(error, file=sys.stderr)
        code = 1
    except KeyboardInterrupt:
        code = 130
    sys.exit(code)
