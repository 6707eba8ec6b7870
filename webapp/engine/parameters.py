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

# --- Breaks and change-overs ---------------------------------------------------------------------
SET_UP_S = 4.0  # s, getting into position before a set; chosen
ENTRY_REPS = 0.4  # reps, cost of kicking up, jumping to the bar, lifting the load to its start; chosen
CHANGE_OVER_S = 8.0  # s, from one block to the next, lane and implement; chosen, used when nothing better is known
FAIL_COST_S = 8.0  # s, lost by a failed attempt beside the rep itself; chosen
WAIT_STEP_S = 5.0  # s, by which somebody who failed waits on before trying again; chosen
PATIENCE_S = 30.0  # s, after which they settle for a single; chosen
LONGEST_WAIT_S = 300.0  # s, after which they try regardless; chosen
MISS_RESTART_S = 3.0  # s, to start again after coming off a skill, `model.md` 2–3 s; chosen
SWITCH_S = 2.0  # s, changing sides of a one-sided implement at a mark; chosen
BREATH_S = 3.0  # s, one calm breath in and out while resting hard; chosen, rests are shown as a count to say silently

# --- Plans ---------------------------------------------------------------------------------------
HELD_BACK = 0.15  # share of the reserve never spent by `break_up` unless said otherwise; chosen
FAIL_RISK = {"steady": 0.05, "even": 0.15, "bold": 0.30}  # most chance of any failed rep; chosen
CAUTION = [0.0, 0.25, 0.5, 0.8, 1.2, 1.6, 2.1]  # standard deviations below the numbers that a plan may be made for; chosen
CADENCE_QUICKEST = 0.9  # share of the usual seconds per unit; chosen
CADENCE_SLOWEST = 1.25
SAME_TIME = 0.01  # plans this near to the best time count as equal: the one with fewest breaks wins; chosen
TWOS_TO_SINGLES = 0.03  # twos are preferred to singles up to this much slower; chosen
WHOLE_REST_S = 10  # s; rests are whole seconds up to here, then multiples of REST_STEP_S; chosen, what one can count
REST_STEP_S = 5

# --- Uncertainty of the numbers, one standard deviation; chosen, to be calibrated on results --------
TESTED_SD = 0.08  # a self-test number
DEFAULT_SD = 0.25  # a number filled from the level
RECOVERY_SD = 0.20
CADENCE_SD = 0.08

# --- Small maxima --------------------------------------------------------------------------------
SMALL_MAX = 3  # up to here singles only
SINGLE_WAIT_S = 20.0  # s, shortest wait between good singles when nobody told; common practice, no source
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
FEW_STEPS = 40  # steps a largest set (or the work) is cut into when units are small; chosen: halving them moved times by under 0.5 %
STYLES = ["steady", "even", "bold"]
GAIN_AS_CAPACITY = 0.3  # doubt in recovery counts as this share of the same doubt in capacity; chosen, measured on the benchmark's grid
GROUPS = ["push", "pull", "grip", "overhead", "legs", "hinge", "trunk"]
PACED_STEPS = 12  # steps that work done at a steady pace is cut into; chosen: nothing is decided inside it
SENSITIVITY_STEP = 0.75  # of the largest set, at which the cost is found again to see how it moves with it; chosen

# --- Work that ends by breath --------------------------------------------------------------------
PACED_DEPTH = 0.35  # depth at which it settles in its primary group at the usual pace; chosen: it can be kept up for many minutes

# --- What is asked -------------------------------------------------------------------------------
EFFORT_M = {"row": 2000, "run": 1000}  # m, distances people know a best time for; common practice, no source
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
