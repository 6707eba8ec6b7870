/** Small changes of an athlete's own break-up, one tap each. Pure; see `own.js` for what a block and its place are. */
import { stepped } from "./numbers.js";
import { USUAL_REST_S, gap } from "./own.js";

const LONGEST_REST_S = 300;
const REST_STEP_S = 5;

const changed = (own, patch) => ({ sets: [...own.sets], rests_s: [...own.rests_s], ...patch });
const inside = (index, { from, to }) => index >= from && index <= to;

/** Sets from..to made this large. */
export function resized(own, range, size, place) {
  const most = place.total;
  const fair = Math.min(most, Math.max(place.grain, size));
  return changed(own, { sets: own.sets.map((old, index) => (inside(index, range) ? fair : old)) });
}

/** Rests after the sets from..to made this long. */
export function rested(own, range, rest_s, place) {
  const fair = Math.min(LONGEST_REST_S, Math.max(place.least_rest_s, rest_s));
  return changed(own, { rests_s: own.rests_s.map((old, index) => (inside(index, range) ? fair : old)) });
}

export const restQuestion = (place) => ({ low: place.least_rest_s, high: LONGEST_REST_S, step: REST_STEP_S });

/** The next rest on the grid of five seconds, the set-up time being the least. */
export const nextRest = (rest_s, direction, place) => stepped(rest_s, direction, restQuestion(place));

/** One more set after this one: of what is missing, else like it. */
export function added(own, index, place) {
  const missing = gap(own, place);
  const size = missing > 0 ? Math.min(missing, own.sets[index]) : own.sets[index];
  const rest_s = own.rests_s[index] ?? own.rests_s.at(-1) ?? Math.max(USUAL_REST_S, place.least_rest_s);
  return { sets: own.sets.toSpliced(index + 1, 0, size), rests_s: own.rests_s.toSpliced(index, 0, rest_s) };
}

/** Without this set and the rest after it (before it, for the last). The only set of a block stays. */
export function removed(own, index) {
  if (own.sets.length < 2) return own;
  return { sets: own.sets.toSpliced(index, 1), rests_s: own.rests_s.toSpliced(Math.min(index, own.rests_s.length - 1), 1) };
}

/** From the set at `index` as far as its neighbours are alike in size and rest. */
export function alike(own, index) {
  const same = (other) => own.sets[other] === own.sets[index] && (own.rests_s[other] ?? own.rests_s[index]) === own.rests_s[index];
  let [from, to] = [index, index];
  while (from > 0 && same(from - 1)) from -= 1;
  while (to + 1 < own.sets.length && same(to + 1)) to += 1;
  return { from, to };
}
