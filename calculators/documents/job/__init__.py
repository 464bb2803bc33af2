"""A job: one batch, with what was typed for it and what was ticked and measured. Nothing worked out is ever kept in
it."""
