"""What is measured now and then: plans, starts, weights, scores."""
