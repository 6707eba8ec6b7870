/** The reserve curve as points of a picture. Pure: plan in, coordinates out; nothing is computed about the body here. */

export const WIDE = 320;
export const HIGH = 170;

const groupsOf = (curve) => Object.keys(curve[0] ?? {}).filter((name) => name !== "t_s" && typeof curve[0][name] === "number");

/** Lowest moment of each group: [{group, reserve, t_s}], the lowest first. */
export function lows(curve) {
  return groupsOf(curve).map((group) => {
    const point = curve.reduce((low, next) => (next[group] < low[group] ? next : low));
    return { group, reserve: point[group], t_s: point.t_s };
  }).sort((one, other) => one.reserve - other.reserve);
}

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

/** The block running at a time. */
export const blockAt = (blocks, t_s) => blocks.find((block) => block.end_s !== null && t_s <= block.end_s + 0.001) ?? blocks[0];
