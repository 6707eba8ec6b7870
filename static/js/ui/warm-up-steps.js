/** The steps of a warm-up in words, and the list of all of them. `view`: {units, workout, common}; common: for a class, without anybody's loads. */
import { el } from "../lib/dom.js";
import { clock, length, load, number } from "../lib/format.js";
import { optionsOf } from "../lib/parts.js";
import { _, amount, holdName, movementName, say } from "../lib/words.js";

const PHASES = () => ({ get_warm: _("Get warm"), loosen: _("Loosen"), build: _("Build"), burst: _("Race pace"), settle: _("Settle") });

/** A drill of the library by its name, one of ours by its code, else the movement itself. */
export function stepName(step) {
  if (step.name) return _(step.name);
  if (step.code) return say({ code: step.code, movement: step.movement, to_movement: step.to_movement });
  return movementName(step.movement);
}

/** How many of its implements a movement takes: two of them are said so. */
function implementsOf({ movement, phase }, { workout }) {
  if (phase !== "build" && phase !== "burst") return 1;
  const block = optionsOf(workout).flatMap((option) => option.blocks).find((one) => one.movement === movement);
  return block?.implements ?? workout.movements[movement]?.implements ?? 1;
}

/** What stands on the implement: a pound label is not the converted mass. */
function loadText(step, view) {
  if (view.common) return _("your own load");
  const { mass } = view.units;
  const one = step.label ? `${number(step.label[mass], 1)}\u00a0${mass}` : load(step.load_kg, view.units);
  const count = implementsOf(step, view);
  return count > 1 ? `${number(count)}\u00a0\u00d7\u00a0${one}` : one;
}

function heightText(step, view) {
  return view.common ? _("your own height") : _("{height} high", { height: length(step.height_m, view.units) });
}

/** Names of our own and some of the library's say themselves that both sides are meant. */
const isEachSide = (step) => step.side === "both" && !step.code && !stepName(step).includes(_("each side"));

/** "4 reps, each side, 20 kg": whatever of it there is. */
export function stepSize(step, view) {
  const hasAmount = step.amount && step.amount !== step.seconds;
  return [
    hasAmount ? amount(step.amount, step.unit, view.units) : null,
    isEachSide(step) ? _("each side") : null,
    step.load_kg ? loadText(step, view) : null,
    step.height_m ? heightText(step, view) : null,
  ].filter(Boolean).join(", ");
}

export function stepLine(step, view) {
  const size = stepSize(step, view);
  return size ? `${stepName(step)}: ${size}` : stepName(step);
}

export const cueText = (step) => (step.cue ? say(step.cue) : "");

/** "Build 2, round 1": where in the whole a step stands. */
export function placeText({ phase, piece, round }) {
  const name = PHASES()[phase] ?? _(phase);
  if (!round) return name;
  return piece ? _("{phase} {piece}, round {round}", { phase: name, piece, round }) : _("{phase}, round {round}", { phase: name, round });
}

/** An extra in a line: what, and instead of what. */
export function extraLine(step, view) {
  const says = { what: stepLine(step, view), drill: step.instead && _(step.instead) };
  if (step.needs_partner) return step.instead ? _("With a partner: {what}, instead of: {drill}", says) : _("With a partner: {what}", says);
  return _("If you like: {what}", says);
}

const MARKS = { done: "\u2713", skipped: "\u2013", cut: "\u2013" };

function item(step, index, { view, state, onGo, heat_s }) {
  const mark = state?.marks[index];
  const isNow = state?.index === index;
  const says = { done: _("done"), skipped: _("left out"), cut: _("left out") };
  return el("li", { class: "step", "data-step": mark ?? (isNow ? "now" : ""), "aria-current": isNow ? "step" : null },
    el("span", { class: "step__mark numeral", "aria-hidden": "true" }, MARKS[mark] ?? (isNow ? "\u25b6" : "")),
    el("span", { class: "step__text" },
      el("strong", {}, stepName(step)), mark && el("span", { class: "visually-hidden" }, says[mark]),
      el("span", {}, stepSize(step, view)), el("span", { class: "soft" }, cueText(step)),
      onGo && !isNow && el("button", { type: "button", class: "button button--quiet button--small step__go", "data-no-print": "", "aria-label": _("Go to: {step}", { step: stepName(step) }), onclick: () => onGo(index) }, _("Go here"))),
    el("span", { class: "step__time numeral" }, heat_s === null ? clock(step.seconds) : `\u2212${clock(heat_s)}`));
}

const extraItem = (step, { view }) => el("li", { class: "step step--extra", "data-step": "extra" }, el("span", { class: "step__text soft" }, extraLine(step, view)));

/** One list per phase and round. `context`: {view, state, onGo, before}; `before(index)`: seconds before the heat a step begins, or null. */
export function stepList(steps, context) {
  const parts = [];
  let index = 0;
  for (const step of steps) {
    const title = placeText(step);
    if (parts.at(-1)?.title !== title) parts.push({ title, items: [] });
    if (step.optional) parts.at(-1).items.push(extraItem(step, context));
    else {
      parts.at(-1).items.push(item(step, index, { ...context, heat_s: context.before(index, step) }));
      index += 1;
    }
  }
  return parts.map(({ title, items }) => el("section", { class: "stack stack--s steps__part" }, el("h2", { class: "steps__title" }, title), el("ol", { class: "steps" }, items)));
}
