/** The break-up screen's pieces for one plan: a workout in parts has several of them, each under its own title. */
import { el } from "../lib/dom.js";
import { span } from "../lib/format.js";
import { partName } from "../lib/round-words.js";
import { _ } from "../lib/words.js";
import { attemptList } from "./attempts.js";
import { curve } from "./curve.js";
import { intervalStrip } from "./intervals.js";
import { planBlocks } from "./plan-blocks.js";
import { planHead } from "./plan-head.js";
import { planReasons, planWarnings } from "./plan-notes.js";
import { splitsList } from "./splits.js";

const titled = (plan, index, count, pieces) => (count > 1 ? [el("h2", { class: "part" }, partName(plan, index)), ...pieces] : pieces);

/** The workout's end on the clock, where it has one. */
export function capOf(workout, option) {
  return workout.shape === "amrap" ? workout.time_s : workout.options?.find(({ key }) => key === option)?.cap_s ?? workout.cap_s ?? null;
}

export const partHead = (plan, index, count) => titled(plan, index, count, [planHead(plan)]);

export function partBody(plan, index, count, context) {
  const { rest_after_s } = context.workout;
  const rest = index < count - 1 && rest_after_s > 0 && el("p", { class: "notice", "data-rest-after": "" }, _("Then a rest of {time}.", { time: span(rest_after_s) }));
  return titled(plan, index, count, [...(plan.attempts ? [attemptList(plan, context.why)] : [intervalStrip(plan), ...planBlocks(plan, context)]), rest]);
}

export function partWhy(plan, index, count, { workout, option }) {
  const pieces = [planWarnings(plan), planReasons(plan), splitsList(plan), curve(plan, capOf(workout, option))].filter(Boolean);
  return pieces.length ? titled(plan, index, count, pieces) : [];
}
