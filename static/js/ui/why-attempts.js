/** Behind each attempt: what limits it, and what a step more or less rest would do, worked out by the engine when somebody looks. */
import { el } from "../lib/dom.js";
import { OVERTAKEN } from "../lib/engine.js";
import { clock, percent, span } from "../lib/format.js";
import { changed, loadStep } from "../lib/own-attempts.js";
import { _, loadName, movementName } from "../lib/words.js";

const LESS_REST_S = 30;   // two seconds change nothing between single lifts; chosen

function limit({ lift, attempts, filled }, place) {
  const share = percent(attempts[place].load_kg / lift.best_kg);
  const params = { share, best: loadName(lift.best_kg), movement: movementName(lift.movement) };
  return filled.length ? _("Your heaviest single limits you. We took {best} for it, a usual one: this is {share} of that.", params)
    : _("Your heaviest single limits you: this is {share} of {best}.", params);
}

/** The changes to be judged: [{kind, blocks}]. */
function edits(blocks, place, step) {
  const heavier = { kind: "heavier", blocks: changed(blocks, place, { load_kg: blocks[place].load_kg + step }) };
  const rest_s = blocks[place].rest_s - LESS_REST_S;
  return place < blocks.length - 1 && rest_s >= 0 ? [heavier, { kind: "rest", blocks: changed(blocks, place, { rest_s }) }] : [heavier];
}

function outcome(kind, { verdict, before }, place) {
  const [now, was] = [verdict.attempts[place], before.attempts[place]];
  if (kind === "heavier") {
    return [_("One step heavier, {load}:", { load: loadName(now.load_kg) }), _("it goes {chance} of the time instead of {before}.", { chance: percent(now.chance_fraction), before: percent(was.chance_fraction) })];
  }
  const next = verdict.attempts[place + 1];
  const told = _("the next one at {time}, and {spare} left at the end.", { time: clock(next.at_s), spare: span(verdict.spare_s ?? 0) });
  const hurried = _("That is less than a minute of rest, too little to count on it.");
  return [_("{time} less of the rest after it:", { time: span(LESS_REST_S) }), next.rested ? told : `${told} ${hurried}`];
}

/** `tell` asks the engine: changed attempts in, {verdict, before} out. */
export function whyAttempts(plan, place, { blocks, tell, units }) {
  const lines = el("div", { class: "stack stack--s" });
  const fill = async () => {
    lines.replaceChildren(el("p", {}, limit(plan, place)));
    for (const edit of edits(blocks, place, loadStep(units))) {
      const told = await tell(`why-attempt-${place}-${edit.kind}`, edit.blocks);
      if (told === OVERTAKEN || told.error) return;
      const [what, then] = outcome(edit.kind, told, place);
      lines.append(el("p", {}, el("strong", {}, what), " ", then));
    }
    details.dataset.told = "";
  };
  const details = el("details", { class: "why", "data-why": "", ontoggle: () => { if (details.open) fill(); } },
    el("summary", {}, _("Why, and what a change would do")), lines);
  return details;
}
