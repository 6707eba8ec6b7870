/** The hold that felt best in the warm-up takes the place of the plan's, and is marked as the athlete's. Pure. */

const chosen = (block, holds) => (block.hold && holds[block.movement] ? { ...block, hold: holds[block.movement], hold_chosen: true } : block);

export function withHolds(plan, holds) {
  const parts = plan.parts && { parts: plan.parts.map((part) => withHolds(part, holds)) };
  return { ...plan, ...parts, ...(plan.blocks && { blocks: plan.blocks.map((block) => chosen(block, holds)) }) };
}
