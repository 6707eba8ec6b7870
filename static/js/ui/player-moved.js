/** The heat slipped, or is called now: one tap each, and the rest of the warm-up follows. */
import { el, findAll, refill } from "../lib/dom.js";
import { heatFromMinutes } from "../lib/heat.js";
import { _, ngettext } from "../lib/words.js";

const MINUTE_MS = 60_000;
const SLIPS_MIN = [5, 15];
const CALLS_MIN = [1, 2, 4, 8];

export class HeatMoved {
  #asks = false;

  /** `onMove(heat, isCalled)` is told the new heat. */
  constructor(root, session, run, onMove) {
    Object.assign(this, { root, session, run, onMove });
    this.draw();
  }

  #slip(minutes) {
    const { heat } = this.session.state;
    this.onMove({ ...heat, at_ms: heat.at_ms + minutes * MINUTE_MS }, false);
  }

  #call(minutes) {
    this.#asks = false;
    this.onMove(heatFromMinutes(minutes, this.run.now_ms), true);
    this.draw();
  }

  #ask(asks) {
    this.#asks = asks;
    this.draw();
  }

  draw() {
    for (const place of findAll("heat-moves", this.root)) refill(place, this.#asks ? this.#called() : this.#moves());
  }

  #moves() {
    const hasHeat = this.run.heat_ms !== null;
    return [...(hasHeat ? this.#slips() : []), hasHeat || this.run.kept ? this.#button(_("Called now"), () => this.#ask(true), "call") : null];
  }

  #button(text, act, hook) {
    return el("button", { type: "button", class: "button button--small", "data-heat-move": hook, onclick: act }, text);
  }

  #slips() {
    const later = SLIPS_MIN.map((n) => this.#button(ngettext("+{n} min", "+{n} min", n), () => this.#slip(n), `+${n}`));
    return [el("span", { class: "moved__title" }, _("The heat is later:")), ...later];
  }

  #called() {
    const starts = CALLS_MIN.map((n) => this.#button(ngettext("{n} min", "{n} min", n), () => this.#call(n), `in-${n}`));
    return [el("span", { class: "moved__title" }, _("It starts in:")), ...starts, this.#button(_("Not called"), () => this.#ask(false), "not")];
  }
}
