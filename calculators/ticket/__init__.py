"""The work ticket: what goes with a batch through the workroom, worked out from its walk each time it is looked at."""
