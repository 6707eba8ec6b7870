/** The reserve curve as points of a picture. Pure: plan in, coordinates out; nothing is computed about the body here. */

export const WIDE = 320;
export const HIGH = 170;

const FARTHEST_CAP = 1.15;  // for somebody who finishes a cap further out than this is not drawn: it would squeeze the rest
const HAIR_S = 1e-6;
const NO_GROUPS = ["t_s", "breath"];

const groupsOf = (curve) => Object.keys(curve[0] ?? {}).filter((name) => !NO_GROUPS.includes(name) && typeof curve[0][name] === "number");

/** Lowest moment of one group, or of breath: {group, reserve, t_s}. */
export function lowest(curve, group) {
  const point = curve.reduce((low, next) => (next[group] < low[group] ? next : low));
  return { group, reserve: point[group], t_s: point.t_s };
}

/** Least of one group between two moments, null where the curve has none there. */
export function lowestBetween(curve, group, from_s, to_s) {
  const within = curve.filter((point) => point.t_s >= from_s - HAIR_S && point.t_s <= to_s + HAIR_S);
  return within.length ? lowest(within, group).reserve : null;
}

/** Lowest moment of each group, the lowest first. */
export const lows = (curve) => groupsOf(curve).map((group) => lowest(curve, group)).sort((one, other) => one.reserve - other.reserve);

/** What gives out at the deciding block comes first; without one, what falls lowest. */
export function mainFirst(found, { deciding, blocks }) {
  const block = deciding && blocks.find((one) => one.block === deciding.block && one.round === deciding.round);
  const main = found.find((low) => low.group === block?.limiting_group) ?? found[0];
  return [main, ...found.filter((low) => low !== main)];
}

export const across = (t_s, end_s) => (WIDE * t_s) / end_s;
export const down = (reserve) => HIGH * (1 - Math.max(0, Math.min(1, reserve)));

/** "0,12 4,15 ..." of one group. */
export function line(curve, group, end_s) {
  return curve.map((point) => `${across(point.t_s, end_s).toFixed(1)},${down(point[group]).toFixed(1)}`).join(" ");
}

/** The finish, from a good day to a bad one: {low_s, high_s, to_cap}; where the bad one does not finish it reaches to the cap. */
export function finishBand({ score }, cap_s = null) {
  const low_s = score.kind === "time" ? score.low : score.high_s;
  if (!Number.isFinite(low_s)) return null;
  if (score.kind === "time" && Number.isFinite(score.high)) return { low_s, high_s: score.high, to_cap: false };
  return Number.isFinite(cap_s) && cap_s > low_s ? { low_s, high_s: cap_s, to_cap: true } : null;
}

/** How far the picture reaches: {end_s, cap_s}; cap_s is null where there is none, or it lies far beyond the finish. */
export function extent(plan, cap_s) {
  const last_s = Math.max(plan.reserve_curve.at(-1).t_s, finishBand(plan, cap_s)?.high_s ?? 0, plan.mine?.before.reserve_curve.at(-1).t_s ?? 0);
  const shown = cap_s && (cap_s <= last_s * FARTHEST_CAP || !plan.score.finishes) ? cap_s : null;
  return { end_s: Math.max(last_s, shown ?? 0), cap_s: shown };
}

/** Start and end of every set of a block: [{start_s, end_s}]. */
export function setSpans({ set_starts_s, rests_s, end_s }) {
  const starts = set_starts_s ?? [];
  return starts.map((start_s, index) => ({ start_s, end_s: index + 1 < starts.length ? starts[index + 1] - (rests_s[index] ?? 0) : end_s }));
}

/** The block running at a time. */
export const blockAt = (blocks, t_s) => blocks.find((block) => block.end_s !== null && t_s <= block.end_s + 0.001) ?? blocks[0];
