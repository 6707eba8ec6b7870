/** The plan with the athlete's own break-up in it, for break-up, card and picture. Pure: what it brings comes from the engine's `judge`. */

export const SAME_S = 0.5;  // what a clock does not show
const OWN_MODES = ["sets", "unbroken", "cadence"];

function modeOf(block, went) {
  if (!OWN_MODES.includes(block.mode)) return block.mode;
  if (went.sets.length > 1) return "sets";
  return block.mode === "cadence" ? "cadence" : "unbroken";
}

const sum = (list) => list.reduce((total, one) => total + one, 0);

const judged = (block, went) => ({ ...block, ...went, mode: modeOf(block, went), reached: true, reasons: [] });

/** What comes after the end keeps its sets aside, as `uncut`; a gate keeps its tries: nobody gets past it. */
function unreached(block, own) {
  const uncut = own ?? block.uncut ?? { sets: block.sets, rests_s: block.rests_s };
  if (!block.reached) return block.sets.length ? block : { ...block, uncut };
  return { ...block, uncut, reached: false, sets: [], rests_s: [], rests_breaths: [], set_starts_s: [], start_s: null, end_s: null, expected_at_cap: 0, count_at_cap: 0, reasons: [] };
}

/** A round that the plan does not reach and the athlete's own does. */
function furtherRound(plan, went) {
  const like = plan.blocks.findLast((block) => block.block === went.block);
  return judged({ ...like, round: went.round, amount: went.sets.length ? sum(went.sets) : like.amount }, went);
}

function scoreOf(plan, verdict) {
  const made = { ...plan.score, finishes: verdict.finishes, low: null, high: null, high_count: null, high_s: null, finish_chance: null };
  if (plan.intervals) return { ...made, likely: verdict.count };
  if (plan.score.kind === "rounds") return { ...made, finishes: true, likely: verdict.rounds, likely_extra: verdict.extra, likely_count: verdict.count };
  return verdict.finishes ? { ...made, kind: "time", likely: verdict.time_s } : { ...made, kind: "count", likely: verdict.count };
}

function tieBreak(plan, blocks, option) {
  const last = blocks.findLast((block) => block.block === option?.tie_break_after_block && block.end_s !== null && !(block.expected_at_cap < block.amount));
  return last ? last.end_s : null;
}

/** `verdict` of the own blocks `own`, `before` of the plan's by the same judge, `option` of the workout. */
export function withMine(plan, own, verdict, before, option) {
  if (plan.attempts) return withAttempts(plan, verdict, before);
  const blocks = plan.blocks.map((block, index) => (verdict.blocks[index] ? judged(block, verdict.blocks[index]) : unreached(block, own[index])));
  for (const went of verdict.blocks.slice(blocks.length)) blocks.push(furtherRound(plan, went));
  const at = plan.deciding && blocks.find((block) => block.block === plan.deciding.block && block.round === plan.deciding.round);
  return {
    ...plan, blocks, ...(plan.intervals && { intervals: verdict.intervals }), reserve_curve: verdict.reserve_curve, reasons: [], mine: { verdict, before },
    deciding: at && at.start_s !== null ? { ...plan.deciding, start_s: at.start_s } : null,
    score: { ...scoreOf(plan, verdict), tie_break_s: plan.score.tie_break_s === null ? null : tieBreak(plan, blocks, option) },
  };
}

function withAttempts(plan, verdict, before) {
  const { attempts, likely, low, high } = verdict;
  return { ...plan, attempts, reasons: [], score: { ...plan.score, likely, low, high }, mine: { verdict, before } };
}

/** What one break-up brings against another: {fails} or {slower_s} or {fewer}; what is above 0 is worse. Of intervals {breaks, broke, less_s},
    of a heaviest lift {lighter_kg}. */
export function against(verdict, before) {
  if (verdict.attempts) return { lighter_kg: before.likely - verdict.likely };
  if (verdict.fails) return { fails: verdict.fails };
  if (verdict.intervals) return { breaks: verdict.breaks, broke: before.breaks, less_s: before.margin_s - verdict.margin_s };
  if (verdict.rounds !== null) return { fewer: before.count - verdict.count, finishes: null };
  if (verdict.time_s !== null && before.time_s !== null) return { slower_s: verdict.time_s - before.time_s };
  return { fewer: before.count - verdict.count, finishes: verdict.finishes !== before.finishes ? verdict.finishes : null };
}

/** What the plan brings by the judge, with what it counts itself: it may stop short of the end, where one more repetition is too great a risk, and the
    judge goes on. */
export function asTold({ score, intervals }, before) {
  const count = intervals ? undefined : { count: score.likely, rounds: score.likely_count }[score.kind];
  return count < before.count ? { ...before, count } : before;
}

/** Does it bring more than what it was held `against`? Of intervals: does a later one break, or none, or is there more to spare? */
export function isBetter({ slower_s, fewer, finishes, breaks, broke, less_s }) {
  if (breaks === undefined) return finishes === true || slower_s < -SAME_S || fewer < 0;
  if (breaks !== broke) return (breaks ?? Infinity) > (broke ?? Infinity);
  return breaks === null && less_s < -SAME_S;
}
