/** Small changes of a plan, to show what each sets at stake. Pure: blocks in, changed blocks out. */
import { resized } from "./own-edits.js";
import { USUAL_REST_S, fitted, places } from "./own.js";

const LESS_REST_S = 2;
const HAIR = 1e-6;

/** Not beyond the largest set: that such an opening fails is no news. */
function oneMore(own, place) {
  const size = own.sets[0] + place.grain;
  return own.sets.length > 1 && size < Math.min(place.total, place.largest + place.grain) - HAIR ? fitted(resized(own, { from: 0, to: 0 }, size, place), place) : null;
}

function lessRest(own, place) {
  const rests_s = own.rests_s.map((rest_s) => Math.max(place.least_rest_s, rest_s - LESS_REST_S));
  return rests_s.some((rest_s, index) => rest_s < own.rests_s[index] - HAIR) ? { ...own, rests_s } : null;
}

function twoSets(own, place) {
  if (own.sets.length > 1 || place.total < 2 * place.grain) return null;
  const first = Math.ceil(place.total / 2 / place.grain) * place.grain;
  return { sets: [first, place.total - first], rests_s: [Math.max(USUAL_REST_S, place.least_rest_s)] };
}

/** Are the sets that are shown the first of these, whole but for the last of several, which the cap may cut? */
const beginsSo = (shown, { sets }) => shown.every((size, index) => Math.abs(size - sets[index]) < HAIR || (index > 0 && index === shown.length - 1 && size < sets[index]));
const isCutInOne = (shown, { sets }) => shown.length === 1 && sets.length > 1;

/** [{kind: "opening" | "rests" | "two_sets", blocks, size, rest_s}]: only changes that can be made to this block as it is shown. */
export function smallEdits(plan, blocks, indexes) {
  const place = places(plan)[indexes[0]];
  const own = blocks[indexes[0]];
  const shown = plan.blocks[indexes[0]].sets;
  if (!beginsSo(shown, own) || isCutInOne(shown, own)) return [];
  const edits = { opening: oneMore(own, place), rests: lessRest(own, place), two_sets: twoSets(own, place) };
  return Object.entries(edits).filter(([, changed]) => changed).map(([kind, changed]) => ({
    kind, size: changed.sets[0], rest_s: changed.rests_s[0], blocks: blocks.map((block, index) => (indexes.includes(index) ? changed : block)),
  }));
}
