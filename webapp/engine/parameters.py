"""Every constant of the model: value, unit, source. A value of our own choosing is marked *chosen*, with the reason.

The four fitted values of the reserve model come from least squares on published multi-set tables (see
`tests/reference/multi_set_reps.csv`); the fit is repeated as a test.
"""

# --- Reserve of a muscle group -------------------------------------------------------------------
QUICK_TIME_CONSTANT_S = 30.0  # s; fitted. Near the 21.5 s of Chorley et al. 2022 and the 22 s half-time of Harris et al. 1976
SLOW_TIME_CONSTANT_S = 330.0  # s; fitted. Near the 388 s of Chorley et al. 2022
SLOW_GAIN = 0.85  # g, slow share gained per depth above the threshold; fitted. One per person, moved by the repeat test
SLOW_GAIN_LOWEST = 0.2  # bounds of a person's own g; chosen: beyond them the repeat test contradicts every published table
SLOW_GAIN_HIGHEST = 1.6
SLOW_THRESHOLD = 0.5  # θ, depth; ammonia rises past half of the possible reps (Sánchez-Medina & González-Badillo 2011)
SLOW_FLOOR = 0.04  # s0, least slow share of any rep; chosen, so that very long work below θ still drifts
SLOWING = 0.4  # k, a rep at depth d lasts 1 + k·d³ times the fresh one; chosen: the bar slows 54–77 %, only part of a rep is the lift
LEFT_AT_FAILURE = 0.5  # reps, left in the mean to who stops because the next does not go; chosen: mid-way between none and one, as `cost_per_rep` has it

# --- Heavy and light in one group, see `handover` -------------------------------------------------
LOSS_EXPONENT = 1.5  # p, strength lost grows as d^p; chosen: between even (1) and late (2), as repetitions slow more and more towards failure
HANDOVER_LEAST = 0.4  # bounds of what a depth is multiplied by; chosen: the relation is loose at both ends
HANDOVER_MOST = 2.5

# --- Breaks and change-overs ---------------------------------------------------------------------
SET_UP_S = 4.0  # s, getting into position before a set; chosen
ENTRY_REPS = 0.4  # reps, cost of kicking up, jumping to the bar, lifting the load to its start; chosen
CHANGE_OVER_S = 8.0  # s, from one block to the next, lane and implement; chosen, used when nothing better is known
FAIL_COST_S = 8.0  # s, lost by a failed attempt beside the rep itself; chosen
WAIT_STEP_S = 5.0  # s, by which somebody who failed waits on before trying again; chosen
PATIENCE_S = 30.0  # s, after which they settle for a single; chosen
LONGEST_GATHER_S = 300.0  # s, after which they try regardless; chosen
MISS_RESTART_S = 3.0  # s, to start again after coming off a skill, two to three; chosen
SWITCH_S = 2.0  # s, changing sides of a one-sided implement at a mark; chosen
BREATH_S = 3.0  # s, one calm breath in and out while resting hard; chosen, rests are shown as a count to say silently

# --- Plans ---------------------------------------------------------------------------------------
HELD_BACK = 0.15  # share of the reserve never spent by `break_up` unless said otherwise; chosen
FAIL_RISK = {"steady": 0.05, "even": 0.15, "bold": 0.30}  # most chance of any failed rep; chosen
CAUTION = [0.0, 0.12, 0.25, 0.37, 0.5, 0.65, 0.8, 1.0, 1.2, 1.4, 1.6, 1.85, 2.1]  # standard deviations below the numbers that a plan may be made for; chosen
CADENCE_QUICKEST = 0.9  # share of the usual seconds per unit; chosen
CADENCE_SLOWEST = 1.25
SLOW_PRICE_S = 450.0  # s, what all of a group's slow fatigue is first guessed to cost the blocks to come; chosen: 300 to 900 hardly differed, see `worth`
SAME_TIME = 0.01  # plans this near to the best time count as equal: the one with fewest breaks wins; chosen
TWOS_TO_SINGLES = 0.03  # twos are preferred to singles up to this much slower; chosen
TWOS_FROM = 7  # largest set from which coaches give twos and threes; common practice, no source ...
TWOS_FROM_SHARE = 0.08  # ... so up to this much slower in a plan made more carefully than the numbers say; chosen
WHOLE_REST_S = 60  # s; rests are whole seconds up to here, then multiples of REST_STEP_S; chosen: fives from 10 s on alone cost 2 to 5 % of the time
REST_STEP_S = 5

# --- Uncertainty of the numbers, one standard deviation; chosen, to be calibrated on results --------
TESTED_SD = 0.08  # a self-test number
DEFAULT_SD = 0.25  # a number filled from the level
RECOVERY_SD = 0.20
CADENCE_SD = 0.08

# --- Small maxima --------------------------------------------------------------------------------
SMALL_MAX = 3  # up to here singles only
SINGLE_WAITS_S = [60.0, 40.0, 25.0]  # s, usual shortest wait between good singles for a largest set of 1, 2, 3; common practice, no source
MANY_SINGLES = 40  # singles that must go at that wait for it to count; chosen
GATE_TRIES = 3  # tries at a movement one cannot do; common practice, no source
GATE_TRY_EVERY_S = 45.0  # s; common practice, no source

# --- Switching sides -----------------------------------------------------------------------------
SWITCH_SHORTEST_M = 7.5  # m; common practice, no source
SWITCH_LONGEST_M = 15.5

# --- Personal recovery ---------------------------------------------------------------------------
REPEAT_TEST_REST_S = 60.0
REPEAT_TEST_FROM = 8  # reps; below, half a rep of error says nothing
REPEAT_TEST_SD_REPS = 0.5
SLOW_GAIN_SD = 0.35  # width of the prior on g; chosen: covers the spread between the seven published conditions
SLOW_GAIN_STEP = 0.02  # grid on which a person's g is looked for; chosen, finer than the test can tell

# --- Long efforts of one movement, see `endurance` -------------------------------------------------
LONG_SET_S = 100.0  # s, a set that lasts longer is asked for as a time; the reserve, fitted to sets of 6 to 60 s, is beyond its data there
LONG_EFFORTS_S = [90, 240]  # s, all-out efforts asked for; chosen: far apart, within the 2 to 15 minutes the line is known for or near
LONGEST_SET_UNITS = 20000.0  # units, "for good"; chosen

# --- Body ----------------------------------------------------------------------------------------
BODY_MASS_KG = 75.0  # when not given; chosen
BODY_HEIGHT_M = 1.72
GRAVITY_M_PER_S2 = 9.80665  # standard gravity, exact (NIST SP 330)

# --- Levels --------------------------------------------------------------------------------------
LEVELS = ["new", "regular", "keen", "expert"]
LEVEL_PACE = {"new": 1.15, "regular": 1.0, "keen": 0.93, "expert": 0.87}  # share of the usual seconds per unit; chosen
RIEGEL_EXPONENT = 1.06  # Riegel 1981, American Scientist 69:285–290 (exponent from memory, high confidence)
FIVE_KM = 5000.0  # m
MIXED_PACE = 1.05  # of the even pace alone over five kilometres, between other work; chosen
SMALL_MAX_SD = 0.15  # a largest set of up to three hides a range of cost (M = 2: 0.33–0.5)

# --- Resolution ----------------------------------------------------------------------------------
LANE_M = 10.0  # m, a usual lane when none is given; chosen
FEW_STEPS = 24  # steps a largest set (or the work) is cut into when units are small; chosen: 80 instead moved no block's time by 0.5 %
STYLES = ["steady", "even", "bold"]
GAIN_AS_CAPACITY = 0.3  # doubt in recovery counts as this share of the same doubt in capacity; chosen, measured on the benchmark's grid
GROUPS = ["push", "pull", "grip", "overhead", "legs", "hinge", "trunk"]
LEAST_GIVE = 0.1  # of a cost's exponent in the largest set; chosen: below, a set is so long that nothing but the cost matters
PACED_STEPS = 12  # steps that work done at a steady pace is cut into; chosen: nothing is decided inside it
SENSITIVITY_STEP = 0.75  # of the largest set, at which the cost is found again to see how it moves with it; chosen

# --- Work that ends by breath --------------------------------------------------------------------
PACED_DEPTH = 0.35  # depth at which it settles in its primary group at the usual pace; chosen: it can be kept up for many minutes

# --- What is asked -------------------------------------------------------------------------------
EFFORT_M = {"row": 2000, "run": 1000}  # m, distances people know a best time for; common practice, no source
SECOND_EFFORT_M = {"row": 1000, "run": 3000}  # m, asked once the first is told: two give W′ as well; chosen: half and three times as far, within 2 to 15 minutes
HARD_SHARE = 0.4  # a movement asked for this share of one's largest set, or more, could stop one; chosen
MOST_NEEDED = 3  # numbers asked before the first plan; chosen: a plan in under a minute
TABLE_ROWS = [[0, 0], [1, 4], [5, 9], [10, 19], [20, 29], [30, None]]  # brackets of the largest set on the class sheet; chosen with coaches in mind

# --- Live re-plan --------------------------------------------------------------------------------
FORM_PRIOR_S = 120.0  # s of work as planned that the first belief in one's form weighs; chosen
FORM_LOWEST = 0.7
FORM_HIGHEST = 1.2

# --- Learning from a heat ------------------------------------------------------------------------
LEARN_GRID = 13  # shares of the largest set that are weighed, from LEARN_LOWEST to its inverse, evenly on the logarithm; chosen
LEARN_LOWEST = 0.6
LEARN_TIME_SD = 0.08  # a block's time differs from the model's by this share for other reasons; chosen
LEARN_LEAST_SD = 0.05  # a number is never believed more than this; chosen
ONE_REP_MAX_SHARE = 0.25  # of a change in the largest set that a one-rep max moves by, both on the logarithm; chosen: Epley at 10 reps

# --- Warm-up: time ---------------------------------------------------------------------------------
WARM_UP_LONGEST_S = 1500.0  # s, 25 min from the first step to the heat; the handbook's 10-20 min (Jeffreys, NSCA Essentials 4th ed.) and the gap
WARM_UP_USUAL_S = 480.0  # s, 8 min; below, the emergency sequence; chosen
WARM_UP_LEAST_S = 240.0  # s, 4 min; below, nothing that deserves the name fits; chosen
GAP_S = 300.0  # s, from the last step to the heat: 5 min (Frikha 2016 Biol Sport 33:361, 15 min of warm-up works best with 5 min of rest)
GAP_LEAST_S = 120.0  # s; window of 2-10 min without re-warming: Silva et al. 2018, Sports Med 48:2285
GAP_SHARE = 1 / 3  # of the time there is, at most; chosen: short warm-ups work best with no rest at all (Frikha 2016)
GAP_SHORTEST_S = 20.0  # s, when hardly any time is left; chosen
SLIP_FOR_REPEAT_S = 900.0  # s; re-warm beyond 15 min: Silva et al. 2018; West et al. 2013, J Sci Med Sport 16:172
REPEAT_S = 180.0  # s, the last part again; chosen, within the 2-3 min of the same sources
REPEAT_REPS = 2  # of a movement in the repeat, kept back from the ramp's most; chosen
STEP_S = 5.0  # s, steps last a multiple of this; chosen, what one can follow on a clock
ESSENTIAL_S = [60.0, 20.0, 20.0, 10.0]  # s, easy minutes, limiting movement, heaviest load, breathing: what is left at the very last; chosen
SHORTEST_STEP_S = 5.0

# How it shortens, richest first. easy_s: easy work at the least. positions: loosened. pieces and rounds of the build; movers: movements in it.
# bursts, holds, change_over: whether they stay. settle_s: the last part. The order is chosen: variety goes first, then rounds, then easy minutes.
WARM_UP_LEVELS = [
    {"easy_s": 300.0, "positions": 5, "pieces": 3, "rounds": 2, "movers": 6, "bursts": 2, "holds": 1, "change_over": 1, "settle_s": 90.0},
    {"easy_s": 300.0, "positions": 4, "pieces": 2, "rounds": 2, "movers": 6, "bursts": 2, "holds": 1, "change_over": 1, "settle_s": 90.0},
    {"easy_s": 240.0, "positions": 3, "pieces": 2, "rounds": 2, "movers": 4, "bursts": 2, "holds": 1, "change_over": 1, "settle_s": 60.0},
    {"easy_s": 210.0, "positions": 3, "pieces": 2, "rounds": 2, "movers": 3, "bursts": 1, "holds": 1, "change_over": 1, "settle_s": 60.0},
    {"easy_s": 180.0, "positions": 2, "pieces": 1, "rounds": 2, "movers": 4, "bursts": 1, "holds": 1, "change_over": 1, "settle_s": 45.0},
    {"easy_s": 180.0, "positions": 2, "pieces": 1, "rounds": 2, "movers": 3, "bursts": 1, "holds": 0, "change_over": 0, "settle_s": 30.0},
    {"easy_s": 150.0, "positions": 1, "pieces": 1, "rounds": 2, "movers": 2, "bursts": 1, "holds": 0, "change_over": 0, "settle_s": 20.0},
    {"easy_s": 120.0, "positions": 1, "pieces": 1, "rounds": 2, "movers": 2, "bursts": 0, "holds": 0, "change_over": 0, "settle_s": 20.0},
    {"easy_s": 120.0, "positions": 1, "pieces": 1, "rounds": 1, "movers": 2, "bursts": 0, "holds": 0, "change_over": 0, "settle_s": 20.0},
    {"easy_s": 90.0, "positions": 0, "pieces": 1, "rounds": 1, "movers": 2, "bursts": 0, "holds": 0, "change_over": 0, "settle_s": 15.0},
    {"easy_s": 60.0, "positions": 0, "pieces": 1, "rounds": 1, "movers": 1, "bursts": 0, "holds": 0, "change_over": 0, "settle_s": 10.0},
]
EMERGENCY_LEVEL = 8  # from here on the essentials and little else

# --- Warm-up: shifts of the easy minutes; all chosen, directions from Racinais et al. 2017, Temperature 4:227 ----------------------------
HEAT_CAUTION_C = 26.7  # °C, 80 °F; current NWS categories
HEAT_EXTREME_CAUTION_C = 32.2  # °C, 90 °F
HEAT_DANGER_C = 39.4  # °C, 103 °F
EASY_SHARE_IN_HEAT = {"usual": 1.0, "caution": 0.8, "extreme_caution": 0.6, "danger": 0.5}
HUMIDITY_UNKNOWN_PERCENT = 50.0  # %, when only the temperature is known
COOL_C = 15.0  # °C, below: a quarter longer
COLD_C = 8.0  # °C, below: half as long again
EASY_SHARE_COOL = 1.25
EASY_SHARE_COLD = 1.5
OLDER_YEARS = 40  # years, from here on a minute more
EARLY_HOUR = 9  # before nine in the morning a minute more: bodies are coolest after waking
EASY_EXTRA_S = 60.0  # s, for age, for the morning, and for people prone to strains; each

# --- Warm-up: doses ---------------------------------------------------------------------------------
RAMP_REPS = 15  # reps per movement at most in build and bursts: a judgement from the ladders of NSCA Essentials and Ribeiro 2020, IJERPH 17:6882
RAMP_DOSES = [[0.5, 4, 6], [0.9, 3, 5], [1.01, 2, 3]]  # up to this share of the working load: fewest and most reps a round (same sources)
RAMP_START_SHARE = 0.4  # of the working load, where a ramp begins (Ribeiro 2020)
LIMITING_DOSE_SHARE = 4  # the limiting skill: a rep for every four of the largest set ...
LIMITING_DOSE_MOST = 4  # ... one to four a round; chosen
LONGEST_HOLD_S = 30.0  # s, of any stretch or hold: 60 s and more cost strength (Behm et al. 2016, Appl Physiol Nutr Metab 41:1)
EASIER_REPS = 4  # of an easier form in the place of a drill; chosen
EASIER_HOLD_S = 10.0
SORE_SHARE = 0.6  # of the working load at the most for a sore part; chosen
TOO_HEAVY_SHARE = 0.7  # of the one-rep max at the most where the working load is more than one can lift; chosen
TOO_HEAVY_UNKNOWN = 0.4  # of the working load at the most where it is more than one can lift and nobody knows by how much; chosen
LIGHT_OF_BODY = 0.12  # of body mass: the light load of the loosening; chosen
LIGHT_MOST_KG = 12.0
LOWER_STEP = 0.75  # of the height asked, the lower one that comes first; chosen
SHARED_FROM = 3  # people to a lane, from here on they take turns; chosen
TURN_S = 5.0  # s, more for a step for every other person on the lane; chosen
TURN_MOST_S = 15.0

# --- Warm-up through the reserve model ----------------------------------------------------------------
WARM_UP_RESERVE_AT_START = 0.95  # least reserve of every group at the start of the heat
WARM_UP_LOWEST_RESERVE = 0.70  # least reserve of the limiting group on the way, for people with four in one go or more
WARM_UP_LOWEST_FROM = 4
DRILL_EFFORT = 0.5  # of the full movement's cost: an easier form in a ladder; chosen
EASIER_UNIT_MOST = 0.1  # of the capacity: one unit of an easier form, at the most; chosen: it would go ten times at least
NO_REP_EFFORT = 0.2  # of the whole capacity: one round of a drill for somebody with no rep; chosen
EASY_EFFORT = 0.4  # of race effort, on the machine; chosen
LIGHTEST = 6  # measures that make the sequence lighter, see `warmup_build`; then it is left so, and says so
WARM_UP_ENTRY_SHARE = 0.25  # of a set's entry cost: in a warm-up one starts unhurried, from a box or a rack; chosen

# --- Warm-up: what there is ---------------------------------------------------------------------------
MACHINES = ["row", "bike", "run"]
MACHINE_SHARES = {  # as the movement library has them: a workout brings only the movements it uses
    "row": {"legs": 1.0, "hinge": 0.6, "pull": 0.5, "grip": 0.35},
    "bike": {"legs": 1.0, "push": 0.15, "pull": 0.15},
    "run": {"legs": 1.0},
}
SPARED_SHARE = 0.4  # a machine with no more than this on the limiting group spares it; chosen
USUAL_RACK = {  # common practice, no source
    "balls_kg": [2, 3, 4, 5, 6, 7, 8, 9, 10, 12],
    "bars_kg": [10, 15, 20],
    "boxes_m": [0.3, 0.4, 0.5, 0.6, 0.75],
    "dumbbells_kg": [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12.5, 15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5, 35, 37.5, 40, 45, 50],
    "kettlebells_kg": [4, 6, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32, 36, 40, 48],
    "plates_kg": [1.25, 2.5, 5, 10, 15, 20, 25],
    "sandbags_kg": [5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80],
}
BAR_LABELS_LB = [[10, 25], [15, 35], [20, 45]]  # kg label, lb label; common practice: a 45 lb bar stands where a 20 kg bar does
PLATE_LABELS_LB = [[1.25, 2.5], [2.5, 5], [5, 10], [10, 25], [15, 35], [20, 45], [25, 55]]  # common practice
KETTLEBELL_LABELS_LB = [[6, 14], [16, 35], [24, 53], [32, 70]]  # common practice; others are whole pounds of the mass
BAR_MOVEMENTS = ["pull-up", "chest-to-bar-pull-up", "toes-to-bar", "hanging-knee-raise"]  # need a bar to hang from
HANGING = "relaxed hang"  # position of the library that means hanging from a bar
OVERHEAD_POSITIONS = ["arms overhead", HANGING]  # what asks for one of these is not for a sore shoulder or neck; anatomy
POSITION_GROUPS = {  # groups of which none may be sore for a position to be loosened; anatomy
    "arms overhead": ["overhead"], "relaxed hang": ["overhead", "pull", "grip"], "chest and front of the shoulder": ["push", "overhead"],
    "wrists bent back": ["push"], "elbows high in front": ["push"], "upper back": ["pull"], "forearms": ["grip"],
    "bottom of the squat": ["legs"], "front of the hips": ["legs"], "ankles": ["legs"], "calves": ["legs"],
    "back of the thighs": ["hinge"], "lower back": ["hinge", "trunk"],
}  # fmt: skip
DRILL_POSITIONS = {  # the position that a loosening drill of the library works in; anatomy
    "Arm circles": "chest and front of the shoulder", "Goblet carry with a kettlebell": "upper back",
    "Hip hinge with a stick along the back": "back of the thighs", "Hold the bottom of the squat": "bottom of the squat",
    "Leg swings": "front of the hips", "Overhead walk, each side": "arms overhead", "Relaxed hang": "relaxed hang",
    "Rock from knees to heels": "front of the hips", "Shoulder shrug in the hang": "relaxed hang", "Small hops on both feet": "calves",
    "Stick over the head and back": "arms overhead", "Walk the hands out and back": "wrists bent back",
    "Wrist circles on all fours": "wrists bent back",
}  # fmt: skip
WALL_MOVEMENTS = ["handstand-push-up", "wall-walk", "wall-throw"]  # need a wall
SORE_GROUPS = {  # which groups a sore part of the body belongs to; anatomy
    "neck": ["overhead"], "shoulder": ["push", "overhead"], "elbow": ["push", "pull"], "wrist": ["push", "grip"], "hand": ["grip"],
    "forearm": ["grip"], "chest": ["push"], "upper back": ["pull"], "back": ["hinge", "trunk"], "lower back": ["hinge", "trunk"],
    "hip": ["legs", "hinge"], "thigh": ["legs", "hinge"], "knee": ["legs"], "calf": ["legs"], "ankle": ["legs"], "foot": ["legs"],
    "belly": ["trunk"],
}  # fmt: skip

# --- Lungs ---------------------------------------------------------------------------------------
FAST_SHARE = 0.5067  # of W′ that comes back fast; Chorley et al. 2022, Eur J Appl Physiol 122(3)
FAST_TIME_CONSTANT_S = 21.5  # s; same
SLOW_AIR_TIME_CONSTANT_S = 388.0  # s; same
BREATH_SLOWS = 0.5  # hard breathing lengthens τu by this share of what is spent of W′; chosen
CP_BY_LEVEL_W_PER_KG = {"new": 1.9, "regular": 2.5, "keen": 3.1, "expert": 3.7}  # W/kg; chosen
W_PRIME_BY_LEVEL_J_PER_KG = {"new": 150.0, "regular": 190.0, "keen": 220.0, "expert": 250.0}  # J/kg; chosen
LUNGS_DEFAULT_SD = 0.15  # of the logarithm of CP from a level; chosen
LUNGS_TESTED_SD = 0.05  # from a known effort; chosen
RUN_J_PER_KG_M = 0.92  # J of mechanical work per kg and m of running: 4.18 J metabolic at 22 %, as the library has it; chosen
LEAST_CP_SHARE = 0.5  # of an effort's power that CP is taken to be at least; chosen: for very short efforts
LEAST_SPREAD = 1.3  # longest over shortest of two efforts that give a line; chosen
AIR_SPENT = {"steady": 0.85, "even": 0.92, "bold": 0.98}  # share of W′ a plan may have spent before its last block; chosen
POSITION_COST = 1.0  # a slower repetition costs its groups this share of a repetition for each repetition's time it lasts longer; chosen
CADENCE_BY_STYLE = {"steady": 1.0, "even": 0.97, "bold": 0.94}  # quickest share of the usual seconds that paced work is planned at; chosen
BREATH_BREAK_S = 15.0  # s, a break for breath inside work done in one go; chosen
MOST_BREATH_BREAKS = 6

# --- Shapes other than for time --------------------------------------------------------------------
MOST_ROUNDS = 60
EVEN_ROUNDS_COST = 0.02  # share of the work that even rounds may cost against rounds each planned for itself; chosen
ATTEMPTS = [0.86, 0.93, 0.98, 1.01]  # shares of the one-rep max tried in turn; common practice, no source
ATTEMPT_REST_S = 150.0  # s between attempts where time allows; 2 to 4 minutes near the maximum (handbook, see tests/reference)
ATTEMPT_SECONDS = 25.0  # s, set-up and lift; chosen
BAR_STEP_KG = 2.5  # kg, by which a bar gets heavier, where nothing is said: the smallest pair of plates of most bars; common practice, no source
ONE_REP_MAX_SD = 0.04  # of the logarithm, from day to day and for the number told; chosen
ONE_REP_MAX_DEFAULT_SD = 0.15  # filled from the level; chosen

# --- Advice --------------------------------------------------------------------------------------
NARROWS = 0.8  # a test that leaves more than this share of the band is not worth proposing; chosen
MUCH_DONE = 0.75  # share of an option's count from which it is worth taking though the cap finds you; chosen
