"""Published orders and made-up ones, their best plans, and the solvers that judge ours."""
