"""Where things lie in the repository."""

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SITE = ROOT / "site"
BUILD = ROOT / "build"
VENV = ROOT / ".venv"
NODE_MODULES = ROOT / "node_modules"
ADDRESS_FILE = BUILD / "address"
