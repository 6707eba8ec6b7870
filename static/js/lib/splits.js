/** What to see on the clock. Pure: times are the plan's own; only between two of them we go by even pace. */
import { setSpans } from "./curve.js";

const QUARTERS = [0.25, 0.5, 0.75];
const MOST_BLOCK_ENDS = 10;   // with more of them only the ends of rounds are worth a glance
const AT_ONCE_S = 2;          // nearer together than this they are one glance; chosen
const HAIR = 1e-9;

const timed = (plan) => plan.blocks.filter((block) => block.end_s !== null && block.movement !== "rest");

/** Ends of blocks, or of rounds where there are too many: [{at_s, block, round, whole_round}]. */
export function ends(plan) {
  const blocks = timed(plan).filter((block) => !(block.expected_at_cap < block.amount - HAIR));
  const found = blocks.map((block) => ({ at_s: block.end_s, movement: block.movement, block: block.block, round: block.round, whole_round: false }));
  const count = Math.max(0, ...plan.blocks.map((block) => block.block));
  if (found.length <= MOST_BLOCK_ENDS || count < 2) return found;
  return found.filter((one) => one.block === count).map((one) => ({ ...one, whole_round: true }));
}

/** Every set with what it counts: a block's count, shared out evenly over its work. */
function counts(plan) {
  return timed(plan).flatMap((block) => {
    const all = block.sets.reduce((sum, size) => sum + size, 0);
    let done = 0;
    return setSpans(block).map((span, index) => {
      const units = block.sets[index];
      const counted = { ...span, units, done, count: (block.count_at_cap * units) / all, block };
      done += units;
      return counted;
    });
  });
}

/** When a quarter, a half and three quarters of what is counted are done, and where one is then: [{at_s, share, movement, done, round}]. */
export function quarters(plan) {
  const sets = counts(plan);
  const whole = sets.reduce((sum, set) => sum + set.count, 0);
  if (whole < QUARTERS.length + 1) return [];
  return QUARTERS.map((share) => {
    let before = 0;
    const set = sets.find((one) => { before += one.count; return before >= share * whole - HAIR; });
    const part = 1 - (before - share * whole) / set.count;
    return {
      share, at_s: set.start_s + part * (set.end_s - set.start_s), movement: set.block.movement, unit: set.block.unit, round: set.block.round,
      done: Math.round(set.done + part * set.units),
    };
  });
}

/** Both in the order of the clock; a quarter that falls on an end is told with it: {…end, quarter}. */
export function splits(plan) {
  const found = quarters(plan);
  const isNear = (end) => (quarter) => Math.abs(quarter.at_s - end.at_s) < AT_ONCE_S;
  const all = ends(plan).map((end) => ({ ...end, quarter: found.find(isNear(end))?.share ?? null }));
  return [...all, ...found.filter((quarter) => !all.some((end) => isNear(end)(quarter)))].sort((one, other) => one.at_s - other.at_s);
}
