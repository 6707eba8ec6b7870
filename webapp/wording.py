"""The engine's codes and parameters as sentences.

`WORDS` holds the English template of each code once; it is the gettext key, and the phone gets the same
table as data. Parameters are filled in by what their name says: `at_s` a time on the clock, `_s` how long, `_kg` a load, `_m` a length,
`_fraction` a percentage, `movement` the name of a movement, `group` the name of a muscle group.
"""

from babel.numbers import format_decimal, format_percent
from flask_babel import gettext

from webapp.catalogues import translator
from webapp.languages import current


def N_(text):
    """Mark a text for extraction and leave it as it is."""
    return text


_ODD_NUMBER = N_("A number here is outside what a plan can be made for: {value}.")
_ODD_INPUT = N_("This workout or these numbers are not in a form a plan can be made from.")

# Codes of EngineError that nobody meets who uses the pages: one sentence serves them all.
_REFUSALS = {
    _ODD_NUMBER: (
        "amount_out_of_range", "bar_step_out_of_range", "cadence_out_of_range", "cap_out_of_range", "ends_out_of_order", "entry_out_of_range", "event_out_of_order",
        "failed_out_of_range", "form_out_of_range", "held_back_out_of_range", "implements_out_of_range",
        "lane_out_of_range", "mark_out_of_range", "max_reps_out_of_range", "reps_out_of_range", "rest_out_of_range", "rounds_out_of_range",
        "seed_out_of_range", "set_up_out_of_range", "steady_out_of_range", "time_out_of_range",
    ),
    _ODD_INPUT: (
        "block_not_a_mapping", "division_unknown", "divisions_not_a_list", "drill_bad", "drills_not_a_list",
        "easier_bad", "easier_not_a_list", "ends_not_a_list", "equipment_not_a_list", "event_beyond_workout",
        "event_not_a_mapping", "event_unknown", "events_not_a_list", "lane_not_a_mapping", "level_unknown", "movement_bad",
        "numbers_not_a_mapping", "option_not_a_mapping", "option_unknown", "options_not_a_list",
        "own_block_not_a_mapping", "own_blocks_not_a_list", "plan_not_a_plan", "rack_bad", "result_not_a_result",
        "settings_not_a_mapping", "style_unknown", "unit_unknown", "workout_not_a_mapping",
    ),
}

WORDS = {code: text for text, codes in _REFUSALS.items() for code in codes} | {
    # What the engine refuses
    "efforts_contradict": N_("These efforts contradict each other: the longer one is faster. Check the times."),
    "efforts_too_alike": N_("These efforts are too alike to tell how your breath lasts: give a short and a long one."),
    "no_work": N_("There is nothing to warm up for in this option."),
    "effort_out_of_range": N_("This distance and time do not go together: {value}."),
    "load_out_of_range": N_("This load is outside what a plan can be made for: {value}."),
    "max_unbroken_out_of_range": N_("This largest set is outside what a plan can be made for: {value}."),
    "movement_unknown": N_("Nobody here knows the movement “{value}”."),
    "no_blocks": N_("A workout needs at least one block."),
    "no_options": N_("A workout needs at least one option."),
    "nothing_fits": N_("No break-up fits these numbers: try an easier option."),
    "one_rep_max_out_of_range": N_("This heaviest single is outside what a plan can be made for: {value}."),
    "repeat_test_bad": N_("The second set of the repeat test cannot be larger than the first."),
    "repeat_test_out_of_range": N_("The second set of the repeat test cannot be larger than the first."),
    "rests_do_not_fit": N_("There must be one rest between every two sets."),
    "seconds_out_of_range": N_("These seconds for one are outside what a plan can be made for: {value}."),
    "sets_do_not_fill": N_("The sets do not add up to the block."),
    "sets_out_of_range": N_("Each set must be at least one and fit into the block."),
    "shape_unknown": N_("Workouts of this kind cannot be planned yet."),
    "too_many_blocks": N_("This workout has more blocks than a plan can hold."),
    # Why a block is planned as it is
    "gate": N_("Tries here: {tries}, at least 45 seconds apart. Every rep is a bonus."),
    "hold_best": N_("The hold that costs you least."),
    "hold_spares": N_("Chosen to spare what comes next: {group}."),
    "last_set_larger": N_("The last set may be larger: {last}."),
    "not_reached": N_("The cap comes before you get here."),
    "opens_at": N_(
        "You open with {opening}, about {share_fraction} of your largest set of {max}: "
        "the second half of a maximum is paid back slowly."
    ),
    "pace_kept_up": N_("A pace you can keep up, by your two long efforts: {share_fraction} of your usual one."),
    "paced_by_breath": N_("Your breath sets the pace here: even from the first to the last, {lasts_s} in all."),
    "quick_singles": N_("Quick singles: drop, step in, pull again, about every {every_s}."),
    "quick_singles_after_sets": N_("First touch and go, then quick singles: drop, step in, pull again, about every {every_s}."),
    "rest_block": N_("A rest for everybody: stand easy, breathe out long."),
    "singles_small_max": N_("With a largest set of {max}, singles with {wait_s} between them get you furthest."),
    "skill_all_out": N_("All out, no planned breaks. About to lose it, reach over the next mark; then start again at once."),
    "skill_until_miss": N_("Go on until you miss, then start again within two or three seconds."),
    "switch_at_marks": N_("Switch sides at a mark, every {every_m}."),
    "taxed_before": N_("Strength left when you get here: {reserve_fraction} ({group}). That is why the sets are smaller than fresh."),
    "unbroken_fits": N_("{amount} in one go fits: your largest set is {max}."),
    "wait_before": N_("Wait {lead_s} before you begin: it is won back in the sets."),
    # What the plan turns on
    "slowed_for_breath": N_("Hold back to {share_fraction} of your usual pace here, or your breath will not last."),
    "paced_in_sets": N_("Your breath would last, but the {group} would not: break it before they give out."),
    "be_there_by": N_("Be at block {block}, {movement}, by {at_s}."),
    "be_there_by_in_round": N_("Be at {movement} in round {round} by {at_s}."),
    "decided_at": N_("It is decided at block {block}: {movement}. What gives out first there: {group}."),
    "decided_by_breath": N_("It is decided at block {block}: {movement}. Your breath gives out first there."),
    "test_narrows": N_("Tell us {number} at {movement}: the range shrinks to {to_fraction} of what it is."),
    "own_effort": N_("your best time"),
    "own_max_unbroken": N_("your largest set"),
    "own_one_rep_max": N_("your heaviest single"),
    "own_steady_s": N_("how long you can keep going"),
    "stops_early": N_(
        "The plan stops at {at_s}: more would be too great a risk for what it knows of you. Whatever you still get in the {left_s} left is a bonus."
    ),
    "hurry_to_gate": N_("Hurry to block {block}, {movement}: the time you get there counts."),
    "hurry_to_gate_in_round": N_("Hurry to {movement} in round {round}: the time you get there counts."),
    # What to mind beside the plan
    # Which option
    "option_prescribed": N_("{option} suits you: likely {done_fraction} of it done."),
    "option_prescribed_all": N_("{option} suits you: most likely you get through all of it."),
    "option_prescribed_gate": N_(
        "{option} counts above every other score here, even with {done_fraction} of it done. "
        "Hurry to {movement}: when you get there counts, and every rep there is a bonus."
    ),
    "option_prescribed_ranks": N_("{option} counts above every other score here, even with {done_fraction} of it done."),
    "option_nothing_counts": N_("The first option would leave you without a single count today. {option} gives you a score: {done_fraction} of it done."),
    "option_scaled": N_("Each option has a ranking of its own, and in {option} you stand best: {done_fraction} of it done."),
    "option_trains": N_("Just for you, no ranking counts: {option} trains you more, with {done_fraction} of it done."),
    "option_only": N_("There is one option here."),
    "option_trains_more": N_("For training alone, {option} gives you more."),
    "ranking_just_for_me": N_("No heat, so no ranking: we look for what trains you most."),
    "ranking_prescribed_first": N_("Your coach’s rule: {option} ranks above every other score."),
    "ranking_separate": N_("Your coach’s rule: every option has a ranking of its own."),
    "ranking_unsaid": N_("Nothing is said about the ranking, so the usual holds: {option} ranks above every other score."),
    # Other shapes than for time
    "attempts_rise": N_("{count} attempts, from {first_kg} up, with {rest_s} between them."),
    "one_attempt": N_("There is time for one attempt only, at {first_kg}."),
    "interval_breaks": N_("Interval {interval} no longer fits, by {over_s}. From there do {keep} and keep the clock."),
    "keep_reps": N_("{count} of the {all}"),
    "keep_share": N_("{share_fraction} of the work"),
    "interval_fits": N_("The work fits every interval: {work_s} of work and {margin_s} to spare in the tightest, number {interval}."),
    "interval_tight": N_("It is tight in interval {interval}: {margin_s} to spare after {work_s} of work."),
    "heavy_single_care": N_("{movement}: lift heavy only with somebody who knows how to spot or a free space to drop it, and stop when the form goes."),
    "interval_out_of_range": N_("This interval cannot be planned: {value}."),
    "one_rep_max_unknown": N_("To plan attempts we need to know your heaviest single."),
    "parts_not_a_list": N_("This workout’s parts cannot be read."),
    "part_not_a_mapping": N_("This workout’s parts cannot be read."),
    "scheme_without_rounds": N_("Most rounds in a time cannot go with a rep scheme: give each block its amount."),
    "cap_is_close": N_("The cap is close: about {chance_fraction} chance of finishing before {cap_s}."),
    "riskier_than_style": N_("Riskier than you asked for: of {people} people with numbers like yours, {fail} would fail somewhere. No calmer plan was found."),
    "inverted_care": N_("{movement}: a mat under the head, two metres clear, no kick-up when dizzy. The coach on the floor decides."),
    "load_outside_relation": N_("{movement}: this load lies outside what is known of reps and loads. Take the sets as a rough guide."),
    "lungs_preset": N_("How long your breath lasts is only estimated here. Slow down before you gasp."),
    "number_guessed": N_("We took a usual number for {movement}. Yours makes the plan fit you."),
}

# --- The warm-up ---
WORDS |= {
    # What it refuses
    "age_out_of_range": N_("This age is outside what a warm-up can be made for: {value}."),
    "free_bad": N_("Say yes or no: is it free?"),
    "height_out_of_range": N_("This height is outside what a warm-up can be made for: {value}."),
    "humidity_out_of_range": N_("Humidity goes from 0 to 100 %: {value} cannot be."),
    "machines_bad": N_("The list of machines cannot be read."),
    "minutes_out_of_range": N_("These minutes are outside what a warm-up can be made for: {value}."),
    "room_out_of_range": N_("This temperature is outside what a warm-up can be made for: {value}."),
    "sets_bad": N_("The sets you mean to do cannot be read."),
    "sore_bad": N_("The list of sore parts cannot be read."),
    # Steps without a drill of the library
    "breathe": N_("Stand easy, breathe out long"),
    "carry_sides": N_("Walk with a light load at your side, then the other side"),
    "chalk": N_("Chalk your hands, tie your shoes"),
    "change_over_rehearsal": N_("Once through the change-over: {movement} to {to_movement}"),
    "easy_bike": N_("Bike, easy"),
    "easy_row": N_("Row, easy"),
    "easy_run": N_("Run, easy"),
    "hold_front": N_("Hold a light load high in front, elbows up, each side"),
    "hold_hinge": N_("Bend at the hips and stand up, slowly, with a light load"),
    "hold_overhead": N_("Walk with a light load overhead, each side"),
    "hold_split": N_("Sink into a long step and rise, with a light load, each side"),
    "hold_squat": N_("Sit into the squat and rise, slowly, with a light load"),
    "jog": N_("Jog"),
    "keep_warm": N_("Keep warm: walk, layers on"),
    "lane_check": N_("Look at your lane: loads, marks, where you turn"),
    "quick_feet": N_("Quick feet on the spot"),
    "quick_hands": N_("Quick punches into the air"),
    "shake_out": N_("Shake arms and legs loose"),
    "stretch_short": N_("A short stretch, moving in and out"),
    "try_holds": N_("Try the ways of holding it: {movement}"),
    "walk_and_swing": N_("Walk briskly, arms swinging"),
    # What to think of
    "a_little_brisker": N_("A little brisker, breathing deeper."),
    "instead_no_bar": N_("In place of {movement}: no bar is free."),
    "instead_no_wall": N_("In place of {movement}: no wall is free."),
    "instead_sore": N_("Light, because you are sore. {movement}: stop if it hurts, and tell the coach."),
    "instead_upright": N_("In place of {movement}: you stay the right way up today."),
    "layers_on": N_("Keep your layers on until you are warm."),
    "race_rhythm": N_("As fast as in the heat, and stop while it is easy."),
    "smooth_and_easy": N_("Smooth and easy."),
    "take_turns": N_("Take turns on the lane."),
    "talk_easily": N_("Easy enough to talk."),
    # Why it is as it is
    "age_longer": N_("A minute more of easy work, for your age."),
    "burst_as_planned": N_("{movement}: {reps} at race pace, as many as your largest set in the heat."),
    "called_early": N_("Called early: only what matters most, at once."),
    "cold_longer": N_("The room is cold ({room_c} °C): more easy minutes, layers on."),
    "heat_slipped_repeat": N_("The heat slipped by {slipped_s}: keep warm, then the last part once more, in three minutes."),
    "heat_slipped_wait": N_("The heat slipped by {slipped_s}: keep warm until then."),
    "hold_tried": N_("{movement}: try each hold, then take this one: {hold}."),
    "hot_shorter": N_("The room feels like {feels_c} °C: fewer easy minutes."),
    "lane_shared": N_("{people} people share your lane, so the steps leave time to take turns."),
    "limiting_dose": N_("{movement}: no more than {reps} at a time here, to keep it fresh."),
    "limiting_no_rep": N_("{movement}: drills that lead up to it, no tries before the heat."),
    "load_beyond_max": N_("{movement}: the load of the workout may be more than you can lift, so the warm-up stays well below it."),
    "machine_avoid": N_("Leave this one alone now: {machine}. It tires what you need most: {group}."),
    "machine_light": N_("Warm up here: {machine}. It uses what you need most ({group}), so keep it easy."),
    "machine_spares": N_("Warm up here: {machine}. It spares what you need most: {group}."),
    "morning_longer": N_("A minute more of easy work, because it is early."),
    "no_machine_jog": N_("No machine needed: get warm on your feet."),
    "nothing_light_enough": N_("{movement}: nothing light enough here, so move without a load."),
    "start_later": N_("You have time: start {starts_s} before the heat."),
    "strain_longer": N_("A minute more of easy work, and lower heights first, because you strain easily."),
    "the_bike": N_("the bike"),
    "the_row": N_("the rower"),
    "the_run": N_("an easy run"),
    "warm_up_lightened": N_("Made lighter, so that you start rested: {group}."),
    "warm_up_shortened": N_("Shortened to the time there is; the usual one takes {usual_s}."),
    # What to mind
    "heat_care": N_("It is hot: drink as you like, stay in the shade, and stop when you feel unwell."),
    "heat_danger": N_("It is dangerously hot. Ask the coach whether the heat goes ahead; stop at once when dizzy, sick or confused."),
    "mat_under_head": N_("A mat under the head for everything upside down."),
    "no_kick_up_dizzy": N_("No kick-up when you are dizzy or see spots: sit down and tell the coach."),
    "sore_care": N_("If something hurts more as you warm up, stop and ask the coach; with pain that is new or sharp, do not start."),
    "two_metres_clear": N_("Two metres clear all round before you go upside down."),
    "warm_up_emergency": N_("Hardly any time: only the essentials. Open the workout slower than planned."),
    "warm_up_tires": N_("Even this warm-up takes something out of you: {group}. Leave out what feels heavy."),
    "warm_up_too_short": N_("Too little time to warm up properly. Begin the workout easily, or ask for a later heat."),
}

GROUPS = {
    "push": N_("pressing muscles"),
    "pull": N_("pulling muscles"),
    "grip": N_("grip"),
    "overhead": N_("shoulders"),
    "legs": N_("legs"),
    "hinge": N_("back and hips"),
    "trunk": N_("trunk"),
}
SECONDS_PER_MINUTE = 60


def templates(language):
    """Every template, and the muscle groups as `group.<key>`, in one language."""
    translate = translator(language)
    named = WORDS | {f"group.{key}": name for key, name in GROUPS.items()}
    return {code: translate(text) for code, text in named.items()}


def say(item, names=None):
    """The sentence for `{"code": ..., **parameters}`; `names` gives movements by key."""
    shown = {key: _shown(key, value, names or {}) for key, value in item.items() if key != "code"}
    return gettext(WORDS[item["code"]]).format_map(shown)


def clock(seconds):
    """A time as people read it off a clock: 0:45, 12:30."""
    minutes, rest = divmod(round(seconds), SECONDS_PER_MINUTE)
    return f"{minutes}:{rest:02d}"


def number(value, places=1):
    """A number in the reader's language, without needless decimals."""
    return format_decimal(round(value, places), locale=current())


def _shown(name, value, names):
    if isinstance(value, dict):
        return say(value, names)
    if name.endswith("movement"):
        return gettext(names.get(value, value))
    if name == "group":
        return gettext(GROUPS[value])
    if name.endswith("_fraction"):
        return format_percent(value, locale=current())
    if name == "at_s":
        return clock(value)
    if name.endswith("_s"):
        return clock(value) if value >= SECONDS_PER_MINUTE else f"{number(value)} s"
    for suffix, unit in (("_kg", "kg"), ("_m", "m")):
        if name.endswith(suffix):
            return f"{number(value)} {unit}"
    return number(value) if isinstance(value, (int, float)) else str(value)
