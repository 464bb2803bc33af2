"""Documents on their way: a link that holds one, one file of everything."""
