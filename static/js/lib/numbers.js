/** From the answers on the screen to the numbers the engine takes. An answer that is null is "not sure". */
import { shownUnit, toShown } from "./format.js";

export const answerKey = (question) => [question.movement, question.kind, question.m ?? question.s].filter(Boolean).join(".");

const HAIR = 1e-6;  // what a division may be off by
const PERSONAL = { body_mass: "body_mass_kg", height: "height_m", age: "age" };
const OF_MOVEMENT = { max_unbroken: "max_unbroken", one_rep_max: "one_rep_max_kg", repeat_test: "repeat_test", seconds_per_unit: "seconds_per_unit" };

/** Belongs to the person rather than to this workout: kept for the next one too. */
export const isPersonal = (question) => question.kind in PERSONAL || question.kind === "effort";

/** A question answered with a time, shown and typed as minutes and seconds. */
export const isTime = (question) => question.kind === "effort" || question.kind === "steady_s";

/** What an answer's key stands for: "push-up.max_unbroken", "row.effort.2000" (metres), "sit-up.long_effort.90" (seconds), or a personal kind alone. */
function readKey(key) {
  if (key in PERSONAL) return { kind: key };
  const [, movement, kind, m] = /^(.+?)\.(\w+)(?:\.(\d+))?$/.exec(key) ?? [];
  return { movement, kind, m: Number(m) };
}

/** Every kept answer counts, whatever the chosen option asks: options stand side by side, each planned with all that was given.
 *  `athlete` holds level and what is personal; `answers` this workout's own. */
export function gatherNumbers(athlete, answers) {
  const numbers = { level: athlete.level, movements: {}, efforts: [] };
  for (const [key, value] of Object.entries({ ...answers, ...athlete.answers })) {
    const { movement, kind, m } = readKey(key);
    if (value === null || !kind) continue;
    if (kind in PERSONAL) numbers[PERSONAL[kind]] = value;
    else if (kind === "effort") numbers.efforts.push({ kind: movement, m, s: value });
    else if (kind === "long_effort") ((numbers.movements[movement] ??= {}).long_efforts ??= []).push([value, m]);
    else (numbers.movements[movement] ??= {})[OF_MOVEMENT[kind] ?? kind] = value;
  }
  return numbers;
}

/** What an answered question still needs beside it to count, as the question to answer too: the repeat test its first set, a long effort the other one. */
export function missingBeside(question, answers, questions) {
  const given = (one) => (answers[answerKey(one)] ?? null) !== null;
  const beside = { repeat_test: "max_unbroken", long_effort: "long_effort" }[question.kind];
  if (!beside || !given(question)) return null;
  return questions.find((one) => one !== question && one.kind === beside && one.movement === question.movement && !given(one)) ?? null;
}

/** Why a typed value cannot be taken, as a code for the screen, or null when it can. */
export function faultOf(value, question) {
  if (value === null || !Number.isFinite(value)) return "no_number";
  if (value < question.low) return "too_low";
  return value > question.high ? "too_high" : null;
}

/** The next value of a stepper: onto the grid of steps, never past the ends. */
export function stepped(value, direction, question) {
  const place = value / question.step;
  const onGrid = direction > 0 ? Math.floor(place + HAIR) + 1 : Math.ceil(place - HAIR) - 1;
  const next = Number((onGrid * question.step).toFixed(6));
  return Math.min(question.high, Math.max(question.low, next));
}

const SHOWN_STEP = { lb: 2, ft: 4 };  // a step of 2.5 kg becomes 5 lb, one of 5 m becomes 20 ft

/** The question as it is shown: its limits, step and default in the person's units. */
export function inUnits(question, units) {
  const shown = shownUnit(question.unit, units);
  const turn = (value, tidy) => (value === null || value === undefined ? null : tidy(toShown(value, question.unit, units)));
  return {
    clock: isTime(question),
    low: turn(question.low, shown === question.unit ? Number : Math.ceil),
    high: turn(question.high, shown === question.unit ? Number : Math.floor),
    default: turn(question.default, shown === question.unit ? Number : Math.round),
    step: question.step * (shown === question.unit ? 1 : SHOWN_STEP[shown] ?? 1),
  };
}
