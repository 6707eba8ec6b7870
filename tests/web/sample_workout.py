"""A small workout, as a file brings it."""


def small_workout():
    """A workout as a file brings it, without the movements it uses."""
    return {
        "schema": 1, "title": "Brass Bell", "shape": "for_time", "cap_s": 600,
        "divisions": [{"key": "a", "name": "Men"}, {"key": "b", "name": "Women"}],
        "options": [{
            "key": "prescribed", "name": "As prescribed", "rounds": 1, "tie_break_after_block": 1,
            "blocks": [
                {"movement": "ring-dip", "amount": 24, "unit": "reps"},
                {"movement": "sandbag-carry", "amount": 48, "unit": "m", "mark_every": 12,
                 "load_kg": {"a": 40, "b": 30}, "note": "Turn behind the line."},
            ],
        }],
        "lane": {"length_m": 12, "turn": True}, "source": {"text": "", "url": None},
        "ranking": "prescribed_first",
        "advice": [{"option": "prescribed", "block": 1, "text": "Shake your arms out first."}], "notes": "",
    }
