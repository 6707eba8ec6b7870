/** Fitting a warm-up to the time there is, while it runs: the engine plans anew, what is done stays done. */
import { inOrder, stateOf } from "./player-state.js";

const NEAR_MIN = 45;             // with more time than this the usual length fits
const FORGOTTEN_MS = 7_200_000;  // two hours after the heat nobody is warming up for it
const LEAST_GAP_S = 120;         // the engine's window for the end of a warm-up is two to ten minutes before the heat
const LONGEST_GAP_S = 600;
const WORTH_WAITING_S = 60;      // a shorter wait is no step of its own
const SAME_S = 30;               // a change smaller than this is not planned for again
const MOST_READY_MIN = 2;        // chosen
const PHASES = ["get_warm", "loosen", "build", "burst", "settle"];

/** The heat a warm-up is for; null when there is none, or it is long past. */
export const heatFor = (heat, now_ms) => (Number.isFinite(heat?.at_ms) && now_ms - heat.at_ms < FORGOTTEN_MS ? heat.at_ms : null);

/** How long after now a warm-up is planned to begin when the heat is near: time to find a machine, less where every minute counts. [min] */
const readyIn_min = (left_min) => Math.max(0, Math.min(MOST_READY_MIN, left_min / 10));

/** Minutes to plan for before it begins: what the athlete said, at most what is left; null for the usual length.
    `starts`: it begins this moment; otherwise a little later. */
export function minutesFor(heat_ms, said_min, now_ms, starts = false) {
  const toHeat_min = heat_ms === null ? null : (heat_ms - now_ms) / 60_000;
  const left_min = toHeat_min === null || starts ? toHeat_min : toHeat_min - readyIn_min(toHeat_min);
  const near_min = left_min !== null && left_min <= NEAR_MIN ? left_min : null;
  if (said_min === null) return near_min;
  return near_min === null ? said_min : Math.min(said_min, near_min);
}

const sign = (step) => [step.phase, step.movement, step.name ?? step.code, step.side, step.load_kg].join("/");

/** Steps with the extras that go before them. */
function groups(steps) {
  const found = [];
  let extras = [];
  for (const step of steps) {
    if (step.optional) extras.push(step);
    else { found.push({ step, extras }); extras = []; }
  }
  return found;
}

const flat = (list) => list.flatMap(({ extras, step }) => [...extras, step]);

/** What a new plan asks for beyond what is done or under way: nothing twice, nothing of an earlier phase unless that was left out whole.
    What follows "keep warm" is there to be done again. */
function stillToDo(planned, done) {
  const counts = new Map();
  for (const step of done) counts.set(sign(step), (counts.get(sign(step)) ?? 0) + 1);
  const reached = Math.max(0, ...done.map((step) => PHASES.indexOf(step.phase)));
  const isInTime = ({ phase }) => PHASES.indexOf(phase) >= reached || !done.some((step) => step.phase === phase);
  const list = groups(planned);
  const wait = list.findIndex(({ step }) => step.code === "keep_warm");
  const first = wait < 0 ? list : list.slice(0, wait);
  const isNew = ({ step }) => {
    const left = counts.get(sign(step)) ?? 0;
    if (left > 0) counts.set(sign(step), left - 1);
    return left === 0 && isInTime(step);
  };
  return [...first.filter(isNew), ...(wait < 0 ? [] : list.slice(wait))];
}

/** The steps up to and with the one under way, and of them those that need not come again. */
const begun = (run, state) => groups(run.steps).slice(0, state.index + 1);
const handled = (kept, { marks }) => kept.filter((one, index) => marks[index] !== "cut").map(({ step }) => step);

/** The run with the rest of a new plan put after what has begun. */
export function joined(run, state, answer) {
  const kept = begun(run, state);
  const rest = stillToDo(answer.steps, handled(kept, state));
  return { ...run, steps: flat([...kept, ...rest]), ends_s: answer.ends_s, reasons: answer.reasons, warnings: answer.warnings };
}

const fits = (state, ends_s) => state.gap_s >= Math.min(ends_s, LEAST_GAP_S);

/** "late", "slipped" or null: must the rest be planned anew? `run.fitted_s` is the gap the last planning left as the best there is. */
export function outOfTime(run, state) {
  if (state.gap_s === null || state.phase === "waiting") return null;
  if (run.fitted_s !== undefined && Math.abs(state.gap_s - run.fitted_s) < SAME_S) return null;
  if (state.phase === "running" && !fits(state, run.ends_s) && state.index < state.count - 1) return "late";
  return state.gap_s > LONGEST_GAP_S && !skippedTheWait(run, state) ? "slipped" : null;
}

/** Whoever skips the waiting does not get it again until the heat moves. */
const skippedTheWait = (run, { marks }) => inOrder(run.steps).some((step, index) => step.code === "keep_warm" && marks[index] === "skipped");

/** The richest plan whose rest fits before the heat, found by halving; `make(patch)` asks the engine. Null when it would not answer. */
async function richest(run, state, now_ms, heat_ms, make) {
  const left_min = Math.max(0, (heat_ms - now_ms) / 60_000);
  const most_min = run.minutes === null ? null : Math.max(run.minutes, left_min);
  let [least, most] = [0, 25];
  let best = null;
  for (let late_min = 0; least <= most; late_min = Math.floor((least + most) / 2)) {
    const answer = await make({ warm_up_min: most_min, late_by_s: late_min * 60 });
    if (!answer) return null;
    const made = joined(run, state, answer);
    if (fits(stateOf(made, now_ms, heat_ms), answer.ends_s)) {
      best = { made, late_min };
      most = late_min - 1;
    } else {
      best ??= { made, late_min };
      least = late_min + 1;
      if (best.late_min < late_min) best = { made, late_min };  // as short as has been seen, until something fits
    }
  }
  return best;
}

/** A run fitted anew to its heat, or null when the engine gave no answer. `fitted_s`: the gap that is left. */
export async function fitted(run, now_ms, heat_ms, make) {
  const state = stateOf(run, now_ms, heat_ms);
  const found = await richest(run, state, now_ms, heat_ms, make);
  if (!found) return null;
  let { made } = found;
  const { off_s } = stateOf(made, now_ms, heat_ms);
  if (off_s >= WORTH_WAITING_S && (off_s > LONGEST_GAP_S - made.ends_s || heat_ms > run.for_ms)) {
    const answer = await make({ warm_up_min: run.minutes, late_by_s: found.late_min * 60, slipped_by_s: off_s });
    if (!answer) return null;
    made = waited(run, state, answer, off_s, now_ms);
  }
  return { ...made, for_ms: heat_ms, fitted_s: stateOf(made, now_ms, heat_ms).gap_s };
}

/** With no heat there is no hurry: the rest of a new plan. */
export async function replanned(run, now_ms, heat_ms, make) {
  const answer = await make({ warm_up_min: run.minutes });
  return answer && joined(run, stateOf(run, now_ms, heat_ms), answer);
}

/** Somebody already waiting waits longer; everybody else gets the wait after what is left to do. */
function waited(run, state, answer, off_s, now_ms) {
  if (state.step?.code !== "keep_warm") return joined(run, state, answer);
  return { ...run, events: [...run.events, { kind: "more", seconds: Math.round(off_s), at_ms: now_ms }] };
}

/** Called early: only the essentials that are not done yet, at once. */
export async function called(run, now_ms, heat_ms, make) {
  const answer = await make({ warm_up_min: null, called_early: Math.max(0, (heat_ms - now_ms) / 1000) });
  if (!answer) return null;
  const left = { ...run, events: [...run.events, { kind: "cut", at_ms: now_ms }] };
  const state = stateOf(left, now_ms, heat_ms);
  const kept = groups(run.steps).slice(0, state.index);
  const steps = flat([...kept, ...stillToDo(answer.steps, handled(kept, state))]);
  const made = { ...left, steps, ends_s: answer.ends_s, reasons: answer.reasons, warnings: answer.warnings, for_ms: heat_ms };
  return { ...made, fitted_s: stateOf(made, now_ms, heat_ms).gap_s };
}
