/** What stands at the top of a plan, as data: a finishing time, or where the cap finds the athlete. */

/** The block in which the cap falls, or null for somebody who finishes. */
export function capBlock(plan) {
  if (plan.score.finishes) return null;
  return plan.blocks.find((block) => block.expected_at_cap !== null && block.expected_at_cap !== undefined && block.expected_at_cap < block.amount) ?? plan.blocks.at(-1);
}

/** {finishes, likely, low, high} and, with a cap in the way, {done, amount, unit, movement, round, reach_s}. */
export function headline(plan) {
  const { likely, low, high, kind, finishes, tie_break_s } = plan.score;
  const told = { kind, finishes, likely, low, high, tie_break_s: tie_break_s ?? null };
  const block = capBlock(plan);
  if (!block) return told;
  return { ...told, done: Math.floor(block.expected_at_cap ?? 0), amount: block.amount, unit: block.unit, movement: block.movement, round: block.round ?? null, reach_s: block.start_s };
}
