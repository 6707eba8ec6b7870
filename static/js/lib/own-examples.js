/** One-tap examples of break-ups that blow up, because seeing it convinces. Pure. */
import { loadStep, startHeavy } from "./own-attempts.js";
import { resized } from "./own-edits.js";
import { fitted, fromPlan, places } from "./own.js";

/** Open at the largest set, then go on as planned: what a start too quick costs. */
export const outHot = (own, place) => {
  const opening = Math.min(place.largest, place.total);
  return opening <= own.sets[0] ? own : fitted(resized(own, { from: 0, to: 0 }, opening, place), place);
};

/** Two halves with the longest of the planned rests between them. */
export function inHalves(own, place) {
  const first = Math.ceil(place.total / 2 / place.grain) * place.grain;
  return { sets: [first, place.total - first], rests_s: [Math.max(...own.rests_s)] };
}

/** An example for the whole workout: every block the plan breaks up is changed, all else stays as planned. */
export function example(plan, change) {
  const start = fromPlan(plan);
  return places(plan).map((place) => (start[place.index]?.sets.length > 1 ? change(start[place.index], place) : start[place.index]));
}

/** By the name of their button: a plan and the units in, own blocks out. */
export const EXAMPLES = {
  hot: (plan, units) => (plan.attempts ? startHeavy(fromPlan(plan), loadStep(units)) : example(plan, outHot)),
  halves: (plan) => example(plan, inHalves),
  plan: fromPlan,
};
