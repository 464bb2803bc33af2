"""The faces of a calculator: page, browser, terminal and plain data, all made from its declaration."""
