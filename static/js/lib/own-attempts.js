/** Small changes of an athlete's own attempts at a heaviest lift. Pure: {load_kg, rest_s} in turn. */

const KG_PER_LB = 0.45359237;       // exact: NIST SP 811, appendix B
const STEP_KG = 2.5;                // the smallest pair of plates of most bars; common practice, no source
const STEP_LB = 5;
const USUAL_REST_S = 120;           // for an attempt added at the end; chosen
const LONGEST_REST_S = 600;
const REST_STEP_S = 15;
const LIGHTEST = 0.4;               // of today's best: what the slide offers; chosen
const HEAVIEST = 1.25;

export const loadStep = (units) => (units.mass === "lb" ? STEP_LB * KG_PER_LB : STEP_KG);

/** The loads a slide offers about today's best. */
export function loadQuestion(best_kg, units) {
  const step = loadStep(units);
  return { low: Math.max(1, Math.round((LIGHTEST * best_kg) / step)) * step, high: Math.round((HEAVIEST * best_kg) / step) * step, step };
}

export const restQuestion = () => ({ low: 0, high: LONGEST_REST_S, step: REST_STEP_S });

export const changed = (own, index, patch) => own.map((one, place) => (place === index ? { ...one, ...patch } : one));

/** One more after this one, a step heavier. */
export function added(own, index, step) {
  const rest_s = own[index].rest_s || (own[index - 1]?.rest_s ?? USUAL_REST_S);
  return [...own.slice(0, index), { ...own[index], rest_s }, { load_kg: own[index].load_kg + step, rest_s: index === own.length - 1 ? 0 : rest_s }, ...own.slice(index + 1)];
}

/** Without this one; the only one stays. */
export const removed = (own, index) => (own.length < 2 ? own : own.toSpliced(index, 1));

/** Open with the plan's last load and go up from there: what a start too heavy costs. */
export const startHeavy = (own, step) => own.map((one, index) => ({ ...one, load_kg: own.at(-1).load_kg + index * step }));
