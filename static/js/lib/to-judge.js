/** Own blocks as the engine's `judge` takes them. Pure. */
import { fitted, gap, places, worked } from "./own.js";

const MORE_ROUNDS = 2;   // than the plan has, where rounds are the score

const total = (stint) => stint.steps * stint.step_units;
const wholeBlock = (block, place) => (gap(block, place) === 0 ? block : block.uncut);

/** Every block filled, at the plan's cadence and with its waits; more rounds where rounds are the score, all intervals where there are any.
    `workout`: the plan's own, of a workout in parts the part. */
export function toJudge(blocks, plan, workout = {}) {
  if (plan.attempts) return blocks;
  const made = places(plan).map((place) => {
    const from = blocks[place.index] ? fitted(blocks[place.index], place) : wholeBlock(plan.blocks[place.index], place);
    return from?.sets.length ? { sets: from.sets, rests_s: from.rests_s, cadence: place.cadence, lead_s: place.lead_s } : null;
  });
  const count = Math.max(...plan.blocks.map((block) => block.block));
  if (plan.score.kind === "rounds") return goneOn(made, plan, count, Math.min(worked(plan).length, (Math.ceil(made.length / count) + MORE_ROUNDS) * count));
  return plan.intervals && made.length ? goneOn(made, plan, count, (workout.interval_count ?? 0) * count) : made;
}

/** Further rounds or intervals than the plan has, each broken up like the one before; a ladder goes on climbing. */
function goneOn(made, plan, count, wanted) {
  const stints = worked(plan);
  const totals = stints.map(total);
  const all = [...made];
  for (let index = made.length; index < wanted; index += 1) {
    totals[index] ??= 2 * totals[index - count] - (totals[index - 2 * count] ?? totals[index - count]);
    const before = all[index - count];
    all.push(before ? { ...before, ...fitted(before, { total: totals[index], least_rest_s: Math.ceil((stints[index] ?? stints.at(-count)).set_up_s) }) } : null);
  }
  return all;
}
