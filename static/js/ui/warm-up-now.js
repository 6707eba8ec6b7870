/** The panel above the steps: when the warm-up begins, or where it is. */
import { el } from "../lib/dom.js";
import { clock, timeOfDay } from "../lib/format.js";
import { totalSeconds, inOrder } from "../lib/player-state.js";
import { _, ngettext, say } from "../lib/words.js";
import { stepLine } from "./warm-up-steps.js";

const IMMINENT_S = 60;

const lead = (text) => el("p", { class: "lead" }, text);
const digits = (left_s) => el("p", { class: "numeral numeral--huge", role: "timer", "aria-live": "off" }, clock(Math.ceil(left_s)));

export function underWay(state, toHeat_s, view) {
  if (state.step) return [el("p", { class: "lead now__step" }, stepLine(state.step, view)), digits(Math.max(0, state.left_s))];
  if (toHeat_s !== null && toHeat_s <= 0) return [lead(_("The heat is on. Your floor card is one tap away."))];
  return [lead(_("Warm. Keep it so: walk, breathe, stay covered.")), toHeat_s && digits(toHeat_s)];
}

/** `answer`: the engine's, or none yet. */
export function beforeIt(answer, toHeat_s) {
  if (!answer) return [lead(_("Making your warm-up …"))];
  if (answer.error) return [lead(say(answer.error))];
  const minutes = Math.round((totalSeconds(inOrder(answer.steps)) + answer.ends_s) / 60);
  if (toHeat_s === null) return [lead(ngettext("Takes {n} minute, the rest before the start included. Start it when you are ready.", "Takes {n} minutes, the rest before the start included. Start it when you are ready.", minutes))];
  const wait_s = toHeat_s - answer.starts_s;
  if (wait_s < IMMINENT_S) return [lead(ngettext("It is time: start now. It takes {n} minute, the rest before the start included.", "It is time: start now. It takes {n} minutes, the rest before the start included.", minutes))];
  return [el("p", { class: "eyebrow" }, _("Starts at {time}, in", { time: timeOfDay(new Date(Date.now() + wait_s * 1000)) })), digits(wait_s)];
}
