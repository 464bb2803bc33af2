"""Values that no calculator may take, or may take only as what they plainly say: each is to be answered with its
sentence.

`REFUSED_EVERYWHERE` are refused by every field that asks for a length; the others depend on the field and say which.
"""

LONG = "9" * 10_000

#: Refused by every field that asks for a length, whatever its limits.
REFUSED_EVERYWHERE = [
    "36 banana", "banana", "banana 36", "1e99", "1e-9", "3000 km", "10 miles", "36 kg", "36 cm²", "NaN", "nan cm",
    "inf", "-inf", "Infinity",
    "None", "null", "undefined", "true", "14 1/", "14 1/ in", "/4", "1/0", "1/0 in", "14 0/0", "1/2/3 in", "14 5/4 in",
    "14 ¼½ in",
    "36 cm 14 in", "36 cm 36 cm", "4 in 1 yd", "20 cm 1 m", "36 in cm", "36 36", "36 cm 4", "1,100", "1,100 mm",
    "1.100,5", "1.2.3", "36..5", "36,,5",
    "--36", "-36", "−36 cm", "–36 cm", "+", "-", "+-36", "36-", "36+", "2*18", "(36)", "=36", "$36", "36%", "#REF!",
    "0x24", "0b1", "36_000", "36'cm",
    "١٢", "３６ cm", "३६", "Ⅻ", "²", "36\u0000", "\u202e36 cm", "\u200b36", "36\u00adcm", "\ud83d", "✂", "🧵", "36🧵",
    "👩‍👩‍👧", "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>", "&lt;b&gt;", "'; DROP TABLE cloth; --", "{{ calculator wash-test }}", "{0}", "%s",
    "${36}", "{width}", "**36**",
    "../../etc/passwd", "\\", '"', "'", "”", "cm", "in", "cm 36", "36 CM cm", "9" * 60, LONG, "x" * 10_000,
    "1/" * 5_000, " 36 cm and a bit", "ｃｍ",
    "a few", "36 to 40 cm", "36–40 cm", "36 x 36 cm", "36 cm × 36 cm", "36;36", "36\n37", "1 1/2 1/2 in", "½½",
]  # fmt: skip

#: Refused by every field that must be given, because nothing is written.
EMPTY = ["", " ", "\t", "\n", "\u00a0", "\u3000", "\u2028"]

#: Too small or too much for the field named; other fields may take them.
BEYOND_LIMITS = [
    ("pieces-from-cloth", "piece_width", "0"), ("pieces-from-cloth", "piece_length", "0 cm"),
    ("pieces-from-cloth", "cloth_width", "0.1 mm"),
    ("pieces-from-cloth", "cloth_length", "1 km".replace("km", "mm")), ("pieces-from-cloth", "cloth_width", "61 m"),
    ("pieces-from-cloth", "least_width", "0"),
    ("pieces-from-cloth", "cloth_length", "9999999 yd"), ("wash-test", "before_length", "0"),
    ("wash-test", "after_width", "4 m"), ("wash-test", "needed_length", "0.5 cm"),
    ("usable-cloth", "folded_length", "0"), ("usable-cloth", "full_width", "100 m"),
    ("usable-cloth", "selvedge", "1 m"), ("usable-cloth", "end_loss", "5001 mm"),
    ("finished-size", "width", "0"), ("finished-size", "length", "21 m"), ("finished-size", "turn", "21 cm"),
    ("finished-size", "hem_top", "2 m"),
    ("mitre-marks", "hem_1", "0"), ("mitre-marks", "hem_2", "1/64 in"), ("mitre-marks", "turn", "1 yd"),
    ("curtains", "rod", "0"), ("curtains", "rod", "21 m"), ("curtains", "drop", "9 cm"),
    ("curtains", "pattern_repeat", "3.1 m"), ("curtains", "cloth_width", "9 mm"), ("curtains", "sold_in", "0"),
]  # fmt: skip

#: Readable one by one, impossible together.
IMPOSSIBLE_TOGETHER = [
    ("pieces-from-cloth", {"piece_width": "3 m"}, {"piece_width"}),
    ("pieces-from-cloth", {"piece_width": "3 m", "piece_length": "20 m"}, {"piece_width", "piece_length"}),
    ("pieces-from-cloth", {"piece_width": "3 m", "may_turn": "yes", "cloth_length": "1 m"}, {"piece_width"}),
    ("wash-test", {"after_length": "10 cm"}, {"after_length"}),
    ("wash-test", {"after_width": "90 cm"}, {"after_width"}),
    ("wash-test", {"after_length": "10 cm", "after_width": "90 cm"}, {"after_length", "after_width"}),
    ("usable-cloth", {"full_width": "10 cm", "selvedge": "5 cm"}, {"selvedge"}),
    ("usable-cloth", {"full_width": "10 cm", "skew": "10 cm"}, {"skew"}),
    ("usable-cloth", {"layers": "1", "folded_length": "10 cm", "extra_length": "0", "end_loss": "5 cm"}, {"end_loss"}),
    ("finished-size", {"width": "5 cm"}, {"hem"}),
    ("finished-size", {"length": "5 cm", "hem_top": "6 cm"}, {"hem_top"}),
    ("finished-size", {"start_from": "finished", "width": "4 cm"}, {"hem"}),
    ("mitre-marks", {"hem_1": "8 cm", "hem_2": "1 cm", "angle": "150"}, {"angle"}),
    ("mitre-marks", {"hem_1": "10 cm", "hem_2": "5 cm", "angle": "120", "seam_allowance": "1 mm"}, {"angle"}),
    ("mitre-marks", {"seam_allowance": "5 cm"}, {"seam_allowance"}),
    ("curtains", {"side_hem": "1 m", "rod": "30 cm", "curtains": "1"}, {"side_hem"}),
    ("curtains", {"side_turn": "3 cm", "lower_turn": "11 cm"}, {"side_turn", "lower_turn"}),
    ("curtains", {"drop": "10 cm"}, {"lower_hem"}),
    ("curtains", {"cloth_width": "3 cm"}, {"selvedge"}),
    ("curtains", {"cloth_width": "2.4 cm", "measured": "trimmed"}, {"seam_allowance"}),
    ("curtains", {"cloth_width": "4 cm", "measured": "trimmed", "seam_allowance": "6 mm"}, {"cloth_width"}),
    ("pieces-from-cloth", {"cloth_width": "3 cm"}, {"selvedge"}),
    ("lay-plan", {"pieces": "Napkin | 2 m | 5 m | 1 | yes"}, {"pieces"}),
    ("lay-plan", {"flaws": "9 m | 1 cm | 1 cm | 1 cm"}, {"flaws"}),
    ("lay-plan", {"selvedge": "49 cm", "cloths": "Linen | 90 cm | 1 m"}, {"selvedge"}),
]  # fmt: skip

#: For fields that are not lengths.
OTHER_KINDS = [
    ("usable-cloth", "layers", bad) for bad in ["0", "-1", "2.5", "four", "201", "1e2", "٤", "4 layers", LONG, "0x4",
        "½", "1,000", "🧵"]
] + [
    ("mitre-marks", "angle", bad) for bad in ["0", "19", "161", "180", "360", "-90", "right", "90 90", "1e2", "nan",
        "٩٠", "90/2", "π", LONG, "90,,5", "🧵"]
] + [
    ("pieces-from-cloth", "may_turn", bad) for bad in ["perhaps", "1", "true", "ye", "yes no", LONG, "🧵"]
] + [
    ("lay-plan", "pieces", f"Napkin | 46 cm | 46 cm | {bad}") for bad in ["0", "1000000", "-1", "1.5", "many",
        "<b>1</b>"]
] + [
    ("thread-time-cost", "rate", bad) for bad in ["dear", "-3", "1,250", "12.345,6", "12 cm", "1e2", "nan", "٣", LONG,
        "<b>1</b>", "🧵"]
] + [
    ("thread-time-cost", "price_cloth", bad) for bad in ["18 per cm", "18 m", "per m", LONG, "🧵"]
] + [
    ("thread-time-cost", "minutes_piece", bad) for bad in ["soon", "1:80", "1 h 80", "-5", "20 cm", "nan", "٣", LONG,
        "<b>1</b>", "🧵"]
] + [
    ("curtains", "curtains", bad) for bad in ["0", "13", "1.5", "a pair", LONG, "🧵"]
] + [
    ("curtains", "fullness", bad) for bad in ["0.9", "5.1", "200 %", "double", "2,5,5", "nan", LONG, "🧵"]
] + [
    ("curtains", "change_length", bad) for bad in ["4.8", "−41", "a little", LONG]
] + [
    ("curtains", "gathered", bad) for bad in ["yes", "B", LONG, "<b>flat</b>"]
] + [
    ("finished-size", "start_from", bad) for bad in ["sewn", "cut finished", "1", LONG, "<b>cut</b>", "🧵"]
]  # fmt: skip
