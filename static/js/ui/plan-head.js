/** The headline of a plan: the likely time with its range, or where the cap finds you and when to be there. */
import { el } from "../lib/dom.js";
import { clock, number } from "../lib/format.js";
import { headline } from "../lib/headline.js";
import { _, amount, movementName } from "../lib/words.js";

const shown = (kind, value) => (kind === "time" ? clock(value) : number(value));

/** A score in a few characters: "9:40", or "31 of 40 reps" where the cap comes first. */
export function shortScore(plan) {
  const told = headline(plan);
  if (told.kind === "time" && told.finishes) return clock(told.likely);
  return told.movement ? _("{done} of {amount}, {movement}", { done: number(told.done), amount: number(told.amount), movement: movementName(told.movement) }) : number(told.likely);
}

/** Shorter still, where the movement is plain from what stands around it. */
export function barestScore(plan) {
  const told = headline(plan);
  return told.movement ? _("{done} of {amount}", { done: number(told.done), amount: amount(told.amount, told.unit) }) : clock(told.likely);
}

export function scoreRange(plan) {
  const { kind, low, high } = headline(plan);
  return _("{low} to {high}", { low: shown(kind, low), high: shown(kind, high) });
}

function finishing(told) {
  return [
    el("p", { class: "eyebrow" }, _("Likely time")),
    el("p", { class: "numeral numeral--huge head__number" }, clock(told.likely)),
    el("p", { class: "lead" }, _("Eight days of ten between {low} and {high}.", { low: clock(told.low), high: clock(told.high) })),
  ];
}

function capped(told) {
  const movement = movementName(told.movement);
  return [
    el("p", { class: "eyebrow" }, _("The cap finds you here")),
    el("p", { class: "numeral numeral--huge head__number" }, number(told.done), el("span", { class: "head__of" }, _("of {amount}", { amount: amount(told.amount, told.unit) }))),
    el("p", { class: "lead" }, told.round > 1 ? _("{movement}, round {round}", { movement, round: told.round }) : movement),
    told.reach_s > 0 && el("p", { class: "lead head__reach" }, _("Be there by {time}: every second sooner is work you get to do.", { time: clock(told.reach_s) })),
    told.kind !== "time" && el("p", {}, _("Likely count {likely}, from {low} to {high}.", { likely: number(told.likely), low: number(told.low), high: number(told.high) })),
  ];
}

export function planHead(plan) {
  const told = headline(plan);
  const tie = told.tie_break_s ? el("p", {}, _("Tie-break at {time}.", { time: clock(told.tie_break_s) })) : null;
  return el("section", { class: "head panel panel--slab stack stack--s", "aria-label": _("Likely score") }, (told.movement ? capped(told) : finishing(told)).filter(Boolean), tie);
}
