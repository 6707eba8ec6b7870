/** Behind each block: what a small change of it would do, worked out by the engine when somebody looks. */
import { el } from "../lib/dom.js";
import { lowestBetween } from "../lib/curve.js";
import { OVERTAKEN } from "../lib/engine.js";
import { percent, span } from "../lib/format.js";
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

const lowestIn = ({ reserve_curve }, block, group) => (block ? lowestBetween(reserve_curve, group, block.start_s, block.end_s) : null);

function lowestLine(left, was) {
  if (left === null || was === null) return "";
  if (percent(left) === percent(was)) return _("Strength left at the lowest stays at {left}.", { left: percent(left) });
  return _("Strength left at the lowest: {left} instead of {before}.", { left: percent(left), before: percent(was) });
}

function outcome(plan, verdict, before, index) {
  if (verdict.fails) return failSentence({ ...plan, mine: { verdict } });
  const [left, was] = [verdict, before].map((one) => lowestIn(one, one.blocks[index], plan.blocks[index].limiting_group));
  return `${difference(verdict, before, "now")} ${lowestLine(left, was)}`.trim();
}

function limit(plan, block) {
  const params = { group: groupName(block.limiting_group), left: percent(lowestIn(plan, block, block.limiting_group) ?? block.lowest_reserve) };
  return _("What gives out first here: {group}. Lowest strength left: {left}, if your numbers are exact. The plan keeps a margin for a day when they are not.", params);
}

/** `tell` asks the engine: changed own blocks in, {verdict, before} out. `indexes`: this block in every round that is done alike. */
export function whyDetails(plan, block, indexes, { blocks, tell }) {
  const own = blocks[block.index];
  if (!own || !block.reached) return null;
  const lines = el("div", { class: "stack stack--s" });
  const fill = async () => {
    lines.replaceChildren(el("p", {}, limit(plan, block)));
    for (const edit of smallEdits(plan, blocks, indexes)) {
      const told = await tell(`why-${block.index}-${edit.kind}`, edit.blocks);
      if (told === OVERTAKEN || told.error) return;
      lines.append(el("p", {}, el("strong", {}, edited(edit, block.unit)), " ", outcome(plan, told.verdict, told.before, block.index)));
    }
    details.dataset.told = "";
  };
  const details = el("details", { class: "why", "data-why": "", ontoggle: () => { if (details.open) fill(); } },
    el("summary", {}, _("Why, and what a change would do")), lines, sortedReasons(block).behind.map((reason) => el("p", {}, say(reason))));
  return details;
}
