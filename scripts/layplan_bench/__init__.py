"""The parts of scripts/bench_layplan.py."""
