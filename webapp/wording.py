"""The engine's codes and parameters as sentences.

`WORDS` holds the English template of each code once; it is the gettext key, and the phone gets the same
table as data. Parameters are filled in by what their name says: `_s` a time, `_kg` a load, `_m` a length,
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
        "amount_out_of_range", "cap_out_of_range", "ends_out_of_order", "entry_out_of_range", "event_out_of_order",
        "failed_out_of_range", "form_out_of_range", "held_back_out_of_range", "implements_out_of_range",
        "lane_out_of_range", "max_reps_out_of_range", "reps_out_of_range", "rest_out_of_range", "rounds_out_of_range",
        "seed_out_of_range", "set_up_out_of_range", "time_out_of_range",
    ),
    _ODD_INPUT: (
        "block_not_a_mapping", "division_unknown", "divisions_not_a_list", "drill_bad", "drills_not_a_list",
        "easier_bad", "easier_not_a_list", "ends_not_a_list", "equipment_not_a_list", "event_beyond_workout",
        "event_not_a_mapping", "event_unknown", "events_not_a_list", "lane_not_a_mapping", "level_unknown",
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
    "paced_by_breath": N_("Your breath sets the pace here: steady from the first to the last."),
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
    "decided_at": N_("It is decided at block {block}: {movement}. What gives out first there: {group}."),
    "hurry_to_gate": N_("Hurry to block {block}, {movement}: the time you get there counts."),
    # What to mind beside the plan
    # Other shapes than for time
    "attempts_rise": N_("{count} attempts, from {first_kg} up, with {rest_s} between them."),
    "interval_breaks": N_("Interval {interval} no longer fits, by {over_s}. From there do {keep_fraction} of the work and keep the clock."),
    "interval_fits": N_("The work fits every interval: {work_s} of work and {margin_s} to spare in the tightest, number {interval}."),
    "interval_tight": N_("It is tight in interval {interval}: {margin_s} to spare after {work_s} of work."),
    "heavy_single_care": N_("{movement}: lift heavy only with somebody who knows how to spot or a free space to drop it, and stop when the form goes."),
    "interval_out_of_range": N_("This interval cannot be planned: {value}."),
    "one_rep_max_unknown": N_("To plan attempts we need to know your heaviest single."),
    "parts_not_a_list": N_("This workout’s parts cannot be read."),
    "part_not_a_mapping": N_("This workout’s parts cannot be read."),
    "scheme_without_rounds": N_("Most rounds in a time cannot go with a rep scheme: give each block its amount."),
    "cap_is_close": N_("The cap is close: about {chance_fraction} chance of finishing before {cap_s}."),
    "inverted_care": N_("{movement}: a mat under the head, two metres clear, no kick-up when dizzy. The coach on the floor decides."),
    "load_outside_relation": N_("{movement}: this load lies outside what is known of reps and loads. Take the sets as a rough guide."),
    "lungs_preset": N_("How long your breath lasts is only estimated here. Slow down before you gasp."),
    "number_guessed": N_("We took a usual number for {movement}. Yours makes the plan fit you."),
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
    if name == "movement":
        return gettext(names.get(value, value))
    if name == "group":
        return gettext(GROUPS[value])
    if name.endswith("_fraction"):
        return format_percent(value, locale=current())
    if name.endswith("_s"):
        return clock(value) if value >= SECONDS_PER_MINUTE else f"{number(value)} s"
    for suffix, unit in (("_kg", "kg"), ("_m", "m")):
        if name.endswith(suffix):
            return f"{number(value)} {unit}"
    return number(value) if isinstance(value, (int, float)) else str(value)
