"""Numbers held against something outside: the cases as data, and the pages that show them. Read by the build and by the
tests."""
