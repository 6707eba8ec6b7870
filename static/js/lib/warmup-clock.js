/** Where a warm-up is at a moment. Pure: the steps, the heat and the time now go in. `at_s` counts back from the heat. */

/** {phase: "before" | "running" | "over" | "unset", index, left_s}: the step now, and seconds to its end (or to the first step). */
export function place(steps, heat_ms, now_ms) {
  if (heat_ms === null || steps.length === 0) return { phase: "unset", index: -1, left_s: null };
  const to_heat_s = (heat_ms - now_ms) / 1000;
  if (to_heat_s > steps[0].at_s) return { phase: "before", index: -1, left_s: to_heat_s - steps[0].at_s };
  const index = steps.findLastIndex((step) => to_heat_s <= step.at_s);
  const last = steps.at(-1);
  if (to_heat_s <= last.at_s - last.seconds) return { phase: "over", index: steps.length, left_s: to_heat_s };
  const next_s = steps[index + 1]?.at_s ?? last.at_s - last.seconds;
  return { phase: "running", index, left_s: to_heat_s - next_s };
}

const NO_SHORTENING_MIN = 45;    // with more time than this the usual length fits
const FORGOTTEN_MS = 7_200_000;  // two hours after the heat nobody is warming up for it

/** The time a warm-up is given, fixed once so that it does not change under the athlete: for a heat, and from now when it is near. */
export function allot(heat_ms, now_ms) {
  const left_min = heat_ms === null ? null : Math.floor((heat_ms - now_ms) / 60_000);
  const isNear = left_min !== null && left_min >= 0 && left_min <= NO_SHORTENING_MIN;
  return { for_ms: heat_ms, minutes: isNear ? left_min : null, anchor_ms: null };
}

/** "Start now": with too little time left the sequence is shortened to it; else it simply runs from this moment. */
export function startNow(heat_ms, now_ms, length_s) {
  const fits = heat_ms === null || heat_ms < now_ms || heat_ms - now_ms >= length_s * 1000;
  return { ...allot(heat_ms, now_ms), anchor_ms: fits ? now_ms + length_s * 1000 : null };
}

/** The moment a warm-up counts back from: its own start, else the heat; null when there is none, or it is long past. */
export function countsBackFrom(allotted, heat_ms, now_ms) {
  const moment_ms = allotted?.anchor_ms ?? heat_ms;
  return moment_ms === null || now_ms - moment_ms > FORGOTTEN_MS ? null : moment_ms;
}

/** When the clock next shows another second, so that it never drifts: the time is worked out anew each time. */
export const untilNextSecond_ms = (left_s) => Math.max(50, (left_s - Math.floor(left_s)) * 1000 + 5);
