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

/** When the clock next shows another second, so that it never drifts: the time is worked out anew each time. */
export const untilNextSecond_ms = (left_s) => Math.max(50, (left_s - Math.floor(left_s)) * 1000 + 5);
