"""Made-up articles: the parts they are cut from, what is done to each edge, and the order of making them up."""
