/** Behind each block: what a small change of it would do, worked out by the engine when somebody looks. */
import { el } from "../lib/dom.js";
import { lowestBetween } from "../lib/curve.js";
import { OVERTAKEN } from "../lib/engine.js";
import { percent, span } from "../lib/format.js";
import { SAME_S } from "../lib/mine.js";
import { smallEdits } from "../lib/what-if.js";
import { _, groupName, say, sizeName } from "../lib/words.js";
import { difference } from "./difference.js";
import { failSentence } from "./own-verdict.js";

const BEHIND = ["hold_best", "hold_spares", "last_set_larger", "taxed_before"];   // true, but one sentence a block is enough at first sight

/** Why a block is as it is: {first, behind}, what stands below its sets and what is unfolded. */
export function sortedReasons({ hold_reason, reasons }) {
  const all = [hold_reason, ...(reasons ?? [])].filter(Boolean);
  return { first: all.filter(({ code }) => !BEHIND.includes(code)), behind: all.filter(({ code }) => BEHIND.includes(code)) };
}

/** What an edit is called. */
function edited({ kind, size, rest_s }, unit) {
  const texts = {
    opening: () => _("Opening with one more, {size}:", { size: sizeName(size, unit) }),
    rests: () => _("Two seconds less of every rest:"),
    two_sets: () => _("In two sets with {time} between them:", { time: span(rest_s) }),
  };
  return texts[kind]();
}

/** Where the interval that breaks is drawn only to its end, nothing is known of what comes after. */
const isDrawn = ({ intervals, reserve_curve }, block) => !intervals || block.end_s <= reserve_curve.at(-1).t_s + SAME_S;

/** Least of a group in these blocks, each up to `until(block)`; null where not all of them are drawn. */
function lowestIn(course, indexes, group, until) {
  const blocks = indexes.map((index) => course.blocks[index]).filter((block) => Number.isFinite(block?.start_s));
  if (!blocks.every((block) => isDrawn(course, block))) return null;
  const found = blocks.map((block) => lowestBetween(course.reserve_curve, group, block.start_s, until(block))).filter((left) => left !== null);
  return found.length ? Math.min(...found) : null;
}

const toItsEnd = (block) => block.end_s;
const toItsLastSet = (block) => block.set_starts_s.at(-1);

/** A larger opening leaves less for the last set, and is paid for by it: only what was left before can be compared. */
function lowestLine(kind, verdict, before, indexes, group) {
  const [left, was] = [verdict, before].map((one) => lowestIn(one, indexes, group, kind === "opening" ? toItsLastSet : toItsEnd));
  if (left === null || was === null) return "";
  const params = { left: percent(left), before: percent(was) };
  const stays = params.left === params.before;
  if (kind === "opening") return stays ? _("Strength left at the lowest before the last set stays at {left}.", params) : _("Strength left at the lowest before the last set: {left} instead of {before}.", params);
  return stays ? _("Strength left at the lowest stays at {left}.", params) : _("Strength left at the lowest: {left} instead of {before}.", params);
}

function outcome(plan, { verdict, before }, kind, indexes) {
  if (verdict.fails) return failSentence({ ...plan, mine: { verdict } });
  return `${difference(verdict, before, "now")} ${lowestLine(kind, verdict, before, indexes, plan.blocks[indexes[0]].limiting_group)}`.trim();
}

function limit(plan, block, indexes) {
  const left = lowestIn(plan, indexes, block.limiting_group, toItsEnd) ?? block.lowest_reserve;
  return _("What gives out first here: {group}. Lowest strength left: {left}, if your numbers are exact. The plan keeps a margin for a day when they are not.",
    { group: groupName(block.limiting_group), left: percent(left) });
}

/** `tell` asks the engine: changed own blocks in, {verdict, before} out. `indexes`: this block in every round that is done alike. */
export function whyDetails(plan, block, indexes, { blocks, tell }) {
  const own = blocks[block.index];
  if (!own || !block.reached) return null;
  const lines = el("div", { class: "stack stack--s" });
  const fill = async () => {
    lines.replaceChildren(el("p", {}, limit(plan, block, indexes)));
    for (const edit of smallEdits(plan, blocks, indexes)) {
      const told = await tell(`why-${block.index}-${edit.kind}`, edit.blocks);
      if (told === OVERTAKEN || told.error) return;
      lines.append(el("p", {}, el("strong", {}, edited(edit, block.unit)), " ", outcome(plan, told, edit.kind, indexes)));
    }
    details.dataset.told = "";
  };
  const details = el("details", { class: "why", "data-why": "", ontoggle: () => { if (details.open) fill(); } },
    el("summary", {}, _("Why, and what a change would do")), lines, sortedReasons(block).behind.map((reason) => el("p", {}, say(reason))));
  return details;
}
