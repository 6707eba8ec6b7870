/** When one works and when one rests within a step, and the sounds that go with it. Pure. */

const CALM = ["keep_warm", "shake_out", "breathe"];   // codes of steps that are rest
const LEAST_REST_S = 5;                               // a shorter tail is no rest worth marking
const NEXT_S = 5;                                     // "get ready for the next" shows this long, a quarter of a short step
const COUNT_S = [3, 2, 1];

/** [{kind: "work" | "rest", from_s, to_s, side}]: what is done for a time has its sides and its rest; all else goes at one's own pace. */
export function stepParts(step, length_s) {
  if (step.phase === "settle" || CALM.includes(step.code)) return [{ kind: "rest", from_s: 0, to_s: length_s, side: null }];
  const sides = step.side === "both" ? ["first", "second"] : [null];
  const timed = step.unit === "s" && step.amount * sides.length <= length_s - LEAST_REST_S;
  if (!timed) return [{ kind: "work", from_s: 0, to_s: length_s, side: null }];
  const work = sides.map((side, turn) => ({ kind: "work", from_s: turn * step.amount, to_s: (turn + 1) * step.amount, side }));
  return [...work, { kind: "rest", from_s: step.amount * sides.length, to_s: length_s, side: null }];
}

/** {stage: "work" | "rest" | "next", side} at a moment of a step. */
export function stageOf({ step, length_s, elapsed_s, left_s }) {
  if (left_s <= Math.min(NEXT_S, length_s / 4)) return { stage: "next", side: null };
  const part = stepParts(step, length_s).findLast((one) => elapsed_s >= one.from_s);
  return { stage: part.kind, side: part.side };
}

/** The sounds of a step still to come: three, two, one, go at its end; a switch of sides; the end of its work. */
export function cuesOf({ step, since_ms, length_s }, now_ms) {
  const at = (seconds, kind) => ({ at_ms: since_ms + seconds * 1000, kind });
  const turns = stepParts(step, length_s).slice(1).map((part) => at(part.from_s, part.kind === "rest" ? "ease" : "switch"));
  const count = COUNT_S.filter((seconds) => seconds < length_s).map((seconds) => at(length_s - seconds, "count"));
  return [...turns, ...count, at(length_s, "go")].filter((cue) => cue.at_ms >= now_ms).sort((one, other) => one.at_ms - other.at_ms);
}

/** Milliseconds until what is on the screen changes next: the shown second, or the stage. */
export function untilChange_ms({ step, length_s, elapsed_s, left_s }) {
  const toSecond_s = left_s > 0 ? left_s - (Math.ceil(left_s) - 1) : 1 - (-left_s % 1);
  const turns = [length_s - Math.min(NEXT_S, length_s / 4), ...stepParts(step, length_s).map((part) => part.from_s)];
  const next_s = Math.min(toSecond_s, ...turns.map((turn_s) => turn_s - elapsed_s).filter((wait_s) => wait_s > 0));
  return Math.max(20, Math.ceil(next_s * 1000) + 1);
}
