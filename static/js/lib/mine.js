/** The plan with the athlete's own break-up in it, for break-up, card and picture. Pure: what it brings comes from the engine's `judge`. */

const OWN_MODES = ["sets", "unbroken", "cadence"];

function modeOf(block, went) {
  if (!OWN_MODES.includes(block.mode)) return block.mode;
  if (went.sets.length > 1) return "sets";
  return block.mode === "cadence" ? "cadence" : "unbroken";
}

const judged = (block, went) => ({ ...block, ...went, mode: modeOf(block, went), reached: true, reasons: [] });

/** A gate keeps its tries: nobody gets past it. */
const unreached = (block) => (block.reached ? { ...block, sets: [], rests_s: [], rests_breaths: [], set_starts_s: [], start_s: null, end_s: null, expected_at_cap: 0, count_at_cap: 0, reasons: [] } : block);

/** A round that the plan does not reach and the athlete's own does. */
function furtherRound(plan, went, index) {
  const like = plan.blocks.findLast((block) => block.block === went.block);
  return judged({ ...like, round: went.round, amount: plan.basis.stints[index]?.amount ?? like.amount }, went);
}

function scoreOf(plan, verdict) {
  const made = { ...plan.score, finishes: verdict.finishes, low: null, high: null, high_count: null, high_s: null, finish_chance: null };
  if (plan.score.kind === "rounds") return { ...made, finishes: true, likely: verdict.rounds, likely_extra: verdict.extra, likely_count: verdict.count };
  return verdict.finishes ? { ...made, kind: "time", likely: verdict.time_s } : { ...made, kind: "count", likely: verdict.count };
}

function tieBreak(plan, blocks, option) {
  const last = blocks.findLast((block) => block.block === option?.tie_break_after_block && block.end_s !== null && !(block.expected_at_cap < block.amount));
  return last ? last.end_s : null;
}

/** `verdict` of the own break-up, `before` of the plan's by the same judge, `option` of the workout. */
export function withMine(plan, verdict, before, option) {
  const blocks = plan.blocks.map((block, index) => (verdict.blocks[index] ? judged(block, verdict.blocks[index]) : unreached(block)));
  verdict.blocks.slice(blocks.length).forEach((went, more) => blocks.push(furtherRound(plan, went, plan.blocks.length + more)));
  const at = plan.deciding && blocks.find((block) => block.block === plan.deciding.block && block.round === plan.deciding.round);
  return {
    ...plan, blocks, reserve_curve: verdict.reserve_curve, reasons: [], mine: { verdict, before },
    deciding: at && at.start_s !== null ? { ...plan.deciding, start_s: at.start_s } : null,
    score: { ...scoreOf(plan, verdict), tie_break_s: plan.score.tie_break_s === null ? null : tieBreak(plan, blocks, option) },
  };
}

/** What one break-up brings against another: {fails} or {slower_s} or {fewer}; what is above 0 is worse. */
export function against(verdict, before) {
  if (verdict.fails) return { fails: verdict.fails };
  if (verdict.rounds !== null) return { fewer: before.count - verdict.count, finishes: null };
  if (verdict.time_s !== null && before.time_s !== null) return { slower_s: verdict.time_s - before.time_s };
  return { fewer: before.count - verdict.count, finishes: verdict.finishes !== before.finishes ? verdict.finishes : null };
}
