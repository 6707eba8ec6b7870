/** A break-up of the athlete's own, as data. Pure: blocks in, changed blocks out; what they bring is for the engine to say.

    An own block is {sets, rests_s}, or null for work that is not broken up. A *place* says what a block asks for. */
export const USUAL_REST_S = 10;   // for a set added where there was no rest before; chosen
const MORE_ROUNDS = 2;
const HAIR = 1e-6;

const sum = (list) => list.reduce((total, one) => total + one, 0);

/** What each block asks for, from the plan's own basis, one for each block in each round. */
export function places(plan) {
  return plan.basis.stints.slice(0, plan.blocks.length).map((stint, index) => ({
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

/** Where an athlete starts from: the plan, whole where the cap cuts it short. */
export function fromPlan(plan) {
  return places(plan).map((place) => {
    const block = plan.blocks[place.index];
    const from = block.reached ? block : block.uncut;
    if (!place.open || !from || from.sets.length === 0) return null;
    return untilTheEnd(fitted({ sets: from.sets, rests_s: from.rests_s }, place), block, plan.basis.cap_s);
  });
}

/** Sets added to a block that the cap cuts short come after the cap, until the athlete brings them forward. */
function untilTheEnd(own, block, cap_s) {
  const planned = block.sets.length;
  if (!block.reached || own.sets.length === planned || cap_s === null) return own;
  const left_s = Math.ceil((cap_s - block.end_s) / 5) * 5;
  return { ...own, rests_s: own.rests_s.map((rest_s, index) => (index === planned - 1 ? Math.max(rest_s, left_s) : rest_s)) };
}

/** Do these own blocks still belong to this plan? */
export function belongs(own, plan) {
  if (own?.option !== plan.option || own.blocks.length !== plan.blocks.length) return false;
  const start = fromPlan(plan);
  return start.every((block, index) => (block === null) === (own.blocks[index] === null));
}

const wholeBlock = (block, place) => (gap(block, place) === 0 ? block : block.uncut);

/** What the engine's `judge` is given: every block filled, at the plan's cadence and with its waits; more rounds where rounds are the score. */
export function toJudge(blocks, plan) {
  const asked = places(plan);
  const made = asked.map((place) => {
    const from = blocks[place.index] ? fitted(blocks[place.index], place) : wholeBlock(plan.blocks[place.index], place);
    return from?.sets.length ? { sets: from.sets, rests_s: from.rests_s, cadence: place.cadence, lead_s: place.lead_s } : null;
  });
  return plan.score.kind === "rounds" ? goneOn(made, plan) : made;
}

/** Where rounds are the score: some more of them than the plan has, each broken up like the one before. */
function goneOn(made, plan) {
  const count = Math.max(...plan.blocks.map((block) => block.block));
  const wanted = (Math.ceil(made.length / count) + MORE_ROUNDS) * count;
  const all = [...made];
  for (const stint of plan.basis.stints.slice(made.length, wanted)) {
    const before = all[all.length - count];
    all.push(before ? { ...before, ...fitted(before, { total: stint.steps * stint.step_units, least_rest_s: Math.ceil(stint.set_up_s) }) } : null);
  }
  return all;
}
