"""A batch that many tests work out: napkins of 36 cm from a cloth of 110 cm by 252 cm, nothing lost at its edges."""

NAPKINS = {
    "wash-test": {"before_length": "50 cm", "after_length": "50 cm", "before_width": "50 cm", "after_width": "50 cm",
        "cloth_width": "110 cm", "cloth_length": "252 cm"},
    "usable-cloth": {"selvedge": "0", "end_loss": "0", "skew": "0"},
    "pieces-from-cloth": {"piece_width": "36 cm", "piece_length": "36 cm"},
    "finished-size": {"turn": "1 cm", "hem": "2.5 cm"},
}  # fmt: skip
