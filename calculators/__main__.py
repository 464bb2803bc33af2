import sys

from calculators.faces.command_line import main

sys.exit(main())
