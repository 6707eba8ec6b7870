/** The headline of a plan: the likely time with its range, or how far you get and when to be at the block that decides. */
import { el } from "../lib/dom.js";
import { clock, number } from "../lib/format.js";
import { headline } from "../lib/headline.js";
import { _, amount, movementName } from "../lib/words.js";

/** A score in a few characters: "9:40", or "31 of 40 reps, Ring dip" where the end comes first. */
export function shortScore(plan) {
  const { end, likely } = headline(plan);
  return end ? _("{done} of {amount}, {movement}", { done: number(end.done), amount: amount(end.amount, end.unit), movement: movementName(end.movement) }) : clock(likely);
}

/** Shorter still, where the movement is plain from what stands around it. */
export function barestScore(plan) {
  const { end, likely } = headline(plan);
  return end ? _("{done} of {amount}", { done: number(end.done), amount: amount(end.amount, end.unit) }) : clock(likely);
}

/** The band from a good day to a bad one; where the cap divides it, a time on one side and a count on the other. */
export function scoreRange(plan) {
  const { kind, low, high, high_count, high_s } = plan.score;
  if (kind === "time" && high === null) return _("{time} to a count of {count} at the cap", { time: clock(low), count: number(high_count) });
  if (kind === "time") return _("{low} to {high}", { low: clock(low), high: clock(high) });
  if (high_s) return _("a count of {count} to finishing in {time}", { count: number(low), time: clock(high_s) });
  return _("a count of {low} to {high}", { low: number(low), high: number(high) });
}

const band = (plan) => el("p", {}, _("Eight days of ten: {range}.", { range: scoreRange(plan) }));

function finishing(plan) {
  return [
    el("p", { class: "eyebrow" }, _("Likely time")),
    el("p", { class: "numeral numeral--huge head__number" }, clock(plan.score.likely)),
    band(plan),
  ];
}

function ended(plan, { end, reach, likely, count_in_all }) {
  const movement = movementName(end.movement);
  return [
    el("p", { class: "eyebrow" }, end.gate ? _("This far, then the gate") : _("The cap finds you here")),
    el("p", { class: "numeral numeral--huge head__number" }, number(end.done), el("span", { class: "head__of" }, _("of {amount}", { amount: amount(end.amount, end.unit) }))),
    el("p", { class: "lead" }, end.round > 1 ? _("{movement}, round {round}", { movement, round: end.round }) : movement),
    reach && el("p", { class: "lead head__reach" }, _("{movement} decides it: be there by {time}.", { movement: movementName(reach.movement), time: clock(reach.at_s) })),
    el("p", {}, _("Likely count {likely} of {all}.", { likely: number(likely), all: number(count_in_all) })),
    band(plan),
  ];
}

export function planHead(plan) {
  const told = headline(plan);
  const tie = told.tie_break_s ? el("p", {}, _("Tie-break at {time}.", { time: clock(told.tie_break_s) })) : null;
  return el("section", { class: "head panel panel--slab stack stack--s", "aria-label": _("Likely score") }, told.end ? ended(plan, told) : finishing(plan), tie);
}
