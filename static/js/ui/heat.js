/** "When is your heat?", asked first because it decides what may be tested and when the warm-up starts. */
import { find, findAll, write } from "../lib/dom.js";
import { dayAndTime, timeOfDay } from "../lib/format.js";
import { heatFromField, heatFromMinutes, isClose, minutesLeft, toField } from "../lib/heat.js";
import { _, ngettext } from "../lib/words.js";
import { Stepper } from "./stepper.js";

const USUAL_MINUTES = 40;
const DAY_MIN = 24 * 60;

export class HeatScreen {
  #session;

  constructor(root, session) {
    this.#session = session;
    this.root = root;
    this.field = find("heat-field", root);
    this.minutes = new Stepper({
      label: _("Minutes until it starts"), unit: _("min"), value: null,
      question: { low: 1, high: 360, step: 5, default: USUAL_MINUTES }, onChange: (n) => this.#inMinutes(n ?? USUAL_MINUTES),
    });
    find("heat-minutes", root).append(this.minutes.node);
    for (const radio of findAll("heat-kind", root)) radio.addEventListener("change", () => this.#pick(radio.value));
    this.field.addEventListener("change", () => this.#atTime());
    this.show();
  }

  #pick(kind) {
    if (kind === "minutes") this.#inMinutes(USUAL_MINUTES);
    if (kind === "none") this.#session.change({ heat: { kind: "none" } });
    if (kind === "at") this.#session.change({ heat: { kind: "at", at_ms: this.#session.state.heat?.at_ms ?? null } });
    this.show();
  }

  #inMinutes(minutes) {
    this.#session.change({ heat: heatFromMinutes(minutes, Date.now()) });
    this.show();
  }

  #atTime() {
    const heat = heatFromField(this.field.value);
    if (heat) this.#session.change({ heat });
    this.show();
  }

  show() {
    const { heat } = this.#session.state;
    for (const radio of findAll("heat-kind", this.root)) radio.checked = radio.value === heat?.kind;
    find("heat-minutes", this.root).hidden = heat?.kind !== "minutes";
    find("heat-at", this.root).hidden = heat?.kind !== "at";
    if (heat?.kind === "minutes") this.minutes.set(Math.max(1, Math.ceil((heat.at_ms - Date.now()) / 60_000)));
    if (heat?.at_ms) this.field.value = toField(heat.at_ms);
    write(find("heat-says", this.root), this.#sentence(heat));
  }

  #sentence(heat) {
    if (heat?.kind === "none") return _("No heat: the plan is just for you, on a day of your choosing.");
    if (!heat?.at_ms) return "";
    const left = minutesLeft(heat, Date.now());
    if (left < 0) return _("That time has passed. Set it again if your heat is still to come.");
    const at = new Date(heat.at_ms);
    const when = left < DAY_MIN ? _("Your heat starts at {time}.", { time: timeOfDay(at) }) : _("Your heat: {when}.", { when: dayAndTime(at) });
    const care = isClose(heat, Date.now()) ? _("From here on we ask only what you remember: no all-out tests this close to it.") : "";
    return `${when} ${care}`.trim();
  }
}

/** "in 38 minutes", for the line under a title; nothing without a heat. */
export function heatLine(heat) {
  const left = minutesLeft(heat, Date.now());
  if (left === null || left < 0) return "";
  return left < 180 ? ngettext("{n} minute to your heat", "{n} minutes to your heat", left) : _("Your heat: {when}.", { when: dayAndTime(new Date(heat.at_ms)) });
}
