/** The headline of a plan: what to expect, with its range, and when to be at the block that decides. */
import { el } from "../lib/dom.js";
import { clock, number } from "../lib/format.js";
import { headline } from "../lib/headline.js";
import { scoreRange } from "../lib/score-words.js";
import { _, amount, loadName, movementName, ngettext, partSize, say } from "../lib/words.js";
import { BREAKS, NARROWS } from "./plan-notes.js";
import { bigNumber, mineSays, mineTag } from "./own-verdict.js";

/** The range, and the one number that would narrow it most. */
function band(plan) {
  const range = scoreRange(plan);
  const narrows = (plan.reasons ?? []).find(({ code }) => code === NARROWS);
  return [range && el("p", {}, _("Eight days of ten: {range}.", { range })), narrows && el("p", {}, el("a", { href: "#numbers" }, say(narrows)))];
}

const eyebrow = (text) => el("p", { class: "eyebrow" }, text);
const huge = (text, more) => el("p", { class: "numeral numeral--huge head__number" }, text, more && el("span", { class: "head__of" }, more));

/** The unit in small beside the figure: as large as it, the line would break within "kg" on a narrow phone. */
const hugeLoad = (kg) => huge(...loadName(kg).split("\u00a0"));

const finishing = (plan) => [eyebrow(_("Likely time")), huge(clock(plan.score.likely)), band(plan)];

function inRounds(plan) {
  const { likely, likely_extra, likely_count } = plan.score;
  const more = likely_extra > 0 ? _("rounds + {extra}", { extra: number(likely_extra) }) : ngettext("round", "rounds", likely);
  return [eyebrow(_("Likely score")), huge(number(likely), more), el("p", {}, _("Likely count {likely}.", { likely: number(likely_count) })), band(plan)];
}

function inIntervals(plan) {
  const { finishes, likely, count_in_all } = plan.score;
  const count = plan.intervals.length;
  const big = finishes ? [eyebrow(_("It fits")), huge(_("{n} of {n}", { n: number(count) }), ngettext("interval", "intervals", count))]
    : [eyebrow(_("It breaks in interval")), huge(number(count))];
  const breaks = plan.reasons.find(({ code }) => code === BREAKS);
  const params = { likely: number(likely), all: number(count_in_all) };
  const counting = finishes ? _("Likely count {likely} of {all}.", params) : _("Likely count up to there: {likely} of {all}.", params);
  return [...big, breaks && el("p", { class: "lead" }, say(breaks)), el("p", {}, counting), band(plan)];
}

function heaviest(plan) {
  const { likely } = plan.score;
  return [eyebrow(_("Likely heaviest lift")), likely > 0 ? hugeLoad(likely) : huge(_("none")), band(plan)];
}

function ended(plan, { end, reach, likely, count_in_all }) {
  const movement = movementName(end.movement);
  return [
    eyebrow(end.gate ? _("This far, then the gate") : _("The cap finds you here")),
    huge(partSize(end.done, end.unit), _("of {amount}", { amount: amount(end.amount, end.unit) })),
    el("p", { class: "lead" }, end.round > 1 ? _("{movement}, round {round}", { movement, round: end.round }) : movement),
    reach && el("p", { class: "lead head__reach" }, _("{movement} decides it: be there by {time}.", { movement: movementName(reach.movement), time: clock(reach.at_s) })),
    el("p", {}, _("Likely count {likely} of {all}.", { likely: number(likely), all: number(count_in_all) })),
    band(plan),
  ];
}

function lines(plan, told) {
  if (plan.mine?.verdict.fails) return [eyebrow(_("It fails here")), huge(bigNumber(plan.mine.verdict))];
  if (plan.score.kind === "rounds") return inRounds(plan);
  if (plan.score.kind === "load") return heaviest(plan);
  if (plan.intervals) return inIntervals(plan);
  return told.end ? ended(plan, told) : finishing(plan);
}

export function planHead(plan) {
  const told = headline(plan);
  const tie = told.tie_break_s ? el("p", {}, _("Tie-break at {time}.", { time: clock(told.tie_break_s) })) : null;
  return el("section", { class: "head panel panel--slab stack stack--s", "aria-label": plan.title ? _("Likely score, {part}", { part: plan.title }) : _("Likely score") },
    plan.mine && mineTag(), lines(plan, told), plan.mine && mineSays(plan), tie);
}

