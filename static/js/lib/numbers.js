/** From the answers on the screen to the numbers the engine takes. An answer that is null is "not sure". */

export const answerKey = (question) => [question.movement, question.kind, question.m].filter(Boolean).join(".");

const PERSONAL = { body_mass: "body_mass_kg", height: "height_m", age: "age" };
const OF_MOVEMENT = { max_unbroken: "max_unbroken", one_rep_max: "one_rep_max_kg", repeat_test: "repeat_test", seconds_per_unit: "seconds_per_unit" };

/** Belongs to the person rather than to this workout: kept for the next one too. */
export const isPersonal = (question) => question.kind in PERSONAL || question.kind === "effort";

/** `athlete` holds level and what is personal; `answers` this workout's own. */
export function gatherNumbers(questions, athlete, answers) {
  const numbers = { level: athlete.level, movements: {}, efforts: [] };
  for (const question of questions) {
    const value = (isPersonal(question) ? athlete.answers : answers)[answerKey(question)] ?? null;
    if (value === null) continue;
    if (question.kind in PERSONAL) numbers[PERSONAL[question.kind]] = value;
    else if (question.kind === "effort") numbers.efforts.push({ kind: question.movement, m: question.m, s: value });
    else (numbers.movements[question.movement] ??= {})[OF_MOVEMENT[question.kind] ?? question.kind] = value;
  }
  return numbers;
}

/** Why a typed value cannot be taken, as a code for the screen, or null when it can. */
export function faultOf(value, question) {
  if (value === null || !Number.isFinite(value)) return "no_number";
  if (value < question.low) return "too_low";
  return value > question.high ? "too_high" : null;
}

/** The next value of a stepper: onto the grid of steps, never past the ends. */
export function stepped(value, direction, question) {
  const onGrid = Math.round(value / question.step) + direction;
  const next = Number((onGrid * question.step).toFixed(6));
  return Math.min(question.high, Math.max(question.low, next));
}
