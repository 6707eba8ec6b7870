/** A break-up of the athlete's own, as data. Pure: blocks in, changed blocks out; what they bring is for the engine to say.

    An own block is {sets, rests_s}, or null for work that is not broken up; of a heaviest lift it is an attempt, {load_kg, rest_s}.
    A *place* says what a block asks for. What is kept is {option, parts: [own blocks]}, one list for each part of the workout. */
export const USUAL_REST_S = 10;   // for a set added where there was no rest before; chosen
const HAIR = 1e-6;

const sum = (list) => list.reduce((total, one) => total + one, 0);

/** The plan's basis without the rests that fill up intervals. */
export const worked = (plan) => plan.basis.stints.filter(({ block }) => block > 0);

/** What each block asks for, from the plan's own basis, one for each block in each round. */
export function places(plan) {
  return worked(plan).slice(0, plan.blocks.length).map((stint, index) => ({
    index, block: stint.block, round: stint.round, movement: stint.movement, unit: stint.unit,
    total: stint.steps * stint.step_units,
    grain: stint.unit === "reps" || stint.kind === "paced" ? stint.step_units : stint.step_units * stint.piece_steps,
    largest: Math.max(1, Math.floor(stint.max_steps + HAIR)) * stint.step_units,
    least_rest_s: Math.ceil(stint.set_up_s), cadence: stint.cadence, lead_s: plan.blocks[index].lead_s,
    open: stint.kind === "local" || (stint.kind === "paced" && plan.blocks[index].sets.length > 1),
  }));
}

/** How far the sets are from the block: above 0 so much is missing, below 0 so much is too much. */
export function gap(own, place) {
  const left = place.total - sum(own.sets);
  return Math.abs(left) < HAIR ? 0 : left;
}

function shortened({ sets, rests_s }, over) {
  const kept = [...sets];
  while (over > HAIR) {
    const less = Math.min(over, kept.at(-1));
    kept[kept.length - 1] -= less;
    over -= less;
    if (kept.at(-1) < HAIR) kept.pop();
  }
  return { sets: kept, rests_s: rests_s.slice(0, kept.length - 1) };
}

/** The same sets made to fill the block: cut off at the end, or gone on with in sets like the last. */
export function fitted(own, place) {
  const missing = gap(own, place);
  if (missing < 0) return shortened(own, -missing);
  const [sets, rests_s] = [[...own.sets], [...own.rests_s]];
  for (let left = missing; left > HAIR; left = place.total - sum(sets)) {
    rests_s.push(rests_s.at(-1) ?? Math.max(USUAL_REST_S, place.least_rest_s));
    sets.push(Math.min(left, own.sets.at(-1)));
  }
  return { sets, rests_s };
}

/** Does the whole break-up of a block begin as what the cap leaves of it? */
function beginsAlike({ sets, rests_s, uncut }) {
  const last = sets.length - 1;
  return sets.slice(0, last).every((size, index) => size === uncut.sets[index] && rests_s[index] === uncut.rests_s[index]) && sets[last] <= uncut.sets[last];
}

/** Where an athlete starts from: the plan, whole where the cap cuts it short. */
export function fromPlan(plan) {
  if (plan.attempts) return plan.attempts.map(({ load_kg, rest_s }) => ({ load_kg, rest_s }));
  return places(plan).map((place) => {
    const block = plan.blocks[place.index];
    const from = block.reached && !(block.uncut && gap(block, place) > 0 && beginsAlike(block)) ? block : block.uncut;
    if (!place.open || !from || from.sets.length === 0) return null;
    return untilTheEnd(fitted({ sets: from.sets, rests_s: from.rests_s }, place), from === block ? block : { reached: false }, plan.basis.cap_s);
  });
}

/** Sets added to a block that the cap cuts short come after the cap, until the athlete brings them forward. */
function untilTheEnd(own, block, cap_s) {
  if (!block.reached || own.sets.length === block.sets.length || cap_s === null) return own;
  const planned = block.sets.length;
  const left_s = Math.ceil((cap_s - block.end_s) / 5) * 5;
  return { ...own, rests_s: own.rests_s.map((rest_s, index) => (index === planned - 1 ? Math.max(rest_s, left_s) : rest_s)) };
}

/** The own blocks kept for one part of an option, null for none; before there were parts they stood alone, as `blocks`. */
export const keptBlocks = (kept, option, index) => (kept?.option === option ? (kept.parts ?? [kept.blocks])[index] ?? null : null);

/** The same with one part's own blocks in it. */
export function withKept(kept, option, index, blocks) {
  const parts = kept?.option === option ? [...kept.parts ?? [kept.blocks]] : [];
  parts[index] = blocks;
  return { option, parts: Array.from(parts, (one) => one ?? null) };
}

const areAttempts = (blocks) => blocks.length > 0 && blocks.every((block) => typeof block?.load_kg === "number");

/** Do these own blocks still belong to this plan? */
export function belongs(blocks, plan) {
  if (!blocks) return false;
  if (plan.attempts) return areAttempts(blocks);
  const start = fromPlan(plan);
  return blocks.length === start.length && start.every((block, index) => (block === null) === (blocks[index] === null) && !(blocks[index] && !blocks[index].sets));
}
