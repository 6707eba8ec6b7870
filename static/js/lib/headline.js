/** What stands at the top of a plan, as data: a finishing time, or how far the athlete gets and when to be at the deciding block. */

/** The block in which the cap, or a gate, ends it; null for somebody who finishes. */
export function lastBlock(plan) {
  if (plan.score.finishes || plan.blocks.length === 0) return null;
  return plan.blocks.find((block) => block.expected_at_cap < block.amount) ?? plan.blocks.at(-1);
}

const isGate = (block) => (block.reasons ?? []).some((reason) => reason.code === "gate");

/** The deciding block, unless it is the very first and so reached at once. */
function toReach({ deciding, blocks }) {
  if (!deciding || !(deciding.start_s > 0)) return null;
  const block = blocks.find((one) => one.block === deciding.block && one.round === deciding.round);
  return block && { movement: block.movement, at_s: deciding.start_s };
}

/** The score's own fields, `end` (the block it ends in: done, amount, unit, movement, round, gate) and `reach`. */
export function headline(plan) {
  const block = lastBlock(plan);
  const end = block && { done: block.expected_at_cap, amount: block.amount, unit: block.unit, movement: block.movement, round: block.round, gate: isGate(block) };
  return { ...plan.score, end, reach: toReach(plan) };
}
