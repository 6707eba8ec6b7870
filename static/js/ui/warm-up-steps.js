/** The list of warm-up steps, each with a tick that is kept. */
import { el } from "../lib/dom.js";
import { clock, load, number } from "../lib/format.js";
import { _, amount, holdName, movementName, say } from "../lib/words.js";

const PHASES = () => ({ get_warm: _("Get warm"), loosen: _("Loosen"), build: _("Build"), burst: _("Race pace"), settle: _("Settle") });

/** A drill of the library by its name, one of ours by its code, else the movement itself. */
function stepName(step) {
  if (step.name) return _(step.name);
  if (step.code) return say({ code: step.code, movement: step.movement, to: step.to && movementName(step.to) });
  return movementName(step.movement);
}

/** What stands on the implement: a pound label is not the converted mass. */
function loadText(step, units) {
  return step.label ? `${number(step.label[units.mass], 1)}\u00a0${units.mass}` : load(step.load_kg, units);
}

/** "4 reps, 20 kg, left side" — whatever of it there is. */
function stepSize(step, units) {
  const sides = { left: _("left side"), right: _("right side"), both: _("both sides") };
  return [
    step.amount && step.amount !== step.seconds ? amount(step.amount, step.unit) : null,
    step.load_kg ? loadText(step, units) : null,
    step.side ? sides[step.side] ?? null : null,
    step.hold ? holdName(step.movement, step.hold) : null,
  ].filter(Boolean).join(", ");
}

export function stepLine(step, units) {
  const size = stepSize(step, units);
  return size ? `${stepName(step)}: ${size}` : stepName(step);
}

/** A key that survives a new plan as long as the step stays what it is. */
const tickKey = (step) => [step.phase, step.movement, step.name ?? step.code, step.side, step.round, step.load_kg].join("/");

function item(step, { ticks, onTick, units }) {
  const key = tickKey(step);
  const instead = step.instead && _("instead of: {drill}", { drill: _(step.instead) });
  const tags = [step.optional && _("if you like"), step.needs_partner && _("with a partner"), instead].filter(Boolean);
  return el("li", { class: "step", "data-step": step.optional ? "extra" : "" },
    el("label", { class: "step__tick" },
      el("input", { type: "checkbox", checked: Boolean(ticks[key]), onchange: (event) => onTick(key, event.target.checked) }),
      el("span", { class: "step__text" },
        el("strong", {}, stepName(step)), el("span", {}, stepSize(step, units)),
        step.cue ? el("span", { class: "soft" }, say(step.cue)) : null,
        tags.length ? el("span", {}, tags.map((tag) => el("span", { class: "tag" }, tag))) : null),
      el("span", { class: "step__time numeral" }, `\u2212${clock(step.at_s)}`)));
}

function groupTitle({ piece, round }, phase) {
  if (!round) return phase;
  return piece ? _("{phase} {piece}, round {round}", { phase, piece, round }) : _("{phase}, round {round}", { phase, round });
}

/** One list per phase and round, headed by the phase's name. */
export function stepList(steps, context) {
  const names = PHASES();
  const groups = [];
  for (const step of steps) {
    const title = groupTitle(step, names[step.phase] ?? _(step.phase));
    if (groups.at(-1)?.title !== title) groups.push({ title, steps: [] });
    groups.at(-1).steps.push(step);
  }
  return groups.map(({ title, steps: own }) => el("section", { class: "stack stack--s" },
    el("h2", { class: "steps__title" }, title),
    el("ol", { class: "steps" }, own.map((step) => item(step, context)))));
}
