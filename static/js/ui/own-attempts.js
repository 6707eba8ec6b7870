/** Attempts of one's own at a heaviest lift: each a load to tap, with the chance that it goes, and the rest after it. */
import { el, inPlace, refill } from "../lib/dom.js";
import { clock, load, number, percent, span } from "../lib/format.js";
import { added, changed, loadQuestion, loadStep, removed, restQuestion } from "../lib/own-attempts.js";
import { stepped } from "../lib/numbers.js";
import { _, movementName } from "../lib/words.js";
import { Slide } from "./slide.js";

export class OwnAttempts {
  #own;
  #lift;
  #units;
  #onChange;
  #picked = null;
  #told = [];

  /** `lift`: of the plan. `onChange` gets the changed attempts. */
  constructor({ own, lift, units, heading, onChange }) {
    this.#own = own;
    this.#lift = lift;
    this.#units = units;
    this.#onChange = onChange;
    this.row = el("ol", { class: "own__sets own__sets--loads" });
    this.editor = el("div", { class: "own__editor panel stack stack--s", hidden: true });
    this.node = el("section", { class: "block stack stack--s", "data-own-attempts": "" },
      el(heading, { class: "block__title" }, movementName(lift.movement), el("small", {}, _("Your attempts"))), this.row, this.editor);
    this.#draw();
  }

  /** What the judge says of each: shown beneath its load. */
  tell(attempts) {
    this.#told = attempts;
    inPlace(this.editor, () => this.#paint());
  }

  #draw() {
    this.shown = this.#own.map((one, index) => this.#attempt(index));
    refill(this.row, this.shown.map(({ node }) => node), el("li", {}, el("button", {
      type: "button", class: "own__add", "aria-label": _("Add an attempt at the end"), onclick: () => this.#add(this.#own.length - 1),
    }, "+")));
    this.#paint();
  }

  #attempt(index) {
    const size = el("span");
    const chance = el("small", { class: "own__chance" });
    const rest = el("span", { class: "own__rest", "aria-hidden": "true" });
    const button = el("button", { type: "button", class: "own__set numeral", "data-own-set": index, onclick: () => this.#pick(index) }, size, chance);
    return { size, chance, rest, button, node: el("li", {}, button, index < this.#own.length - 1 && rest) };
  }

  #chance(index) {
    const told = this.#told[index];
    if (!told) return "";
    return told.fits ? percent(told.chance_fraction) : _("too late");
  }

  #paint() {
    this.shown.forEach(({ size, chance, rest, button }, index) => {
      const { load_kg, rest_s } = this.#own[index];
      const name = { place: number(index + 1), load: load(load_kg, this.#units), chance: this.#chance(index), time: span(rest_s), at: clock(this.#told[index]?.at_s ?? 0) };
      button.setAttribute("aria-label", index === 0 ? _("Attempt {place}: {load}, as soon as the clock starts, it goes: {chance}", name) : _("Attempt {place}: {load}, at {at}, it goes: {chance}", name));
      button.setAttribute("aria-pressed", String(this.#picked === index));
      size.textContent = name.load;
      chance.textContent = name.chance;
      rest.textContent = name.time;
    });
  }

  #pick(index) {
    this.#picked = this.#picked === index ? null : index;
    this.#open();
    this.#paint();
  }

  #open() {
    this.editor.hidden = this.#picked === null;
    if (this.#picked === null) return this.editor.replaceChildren();
    const index = this.#picked;
    const { low, high, step } = loadQuestion(this.#lift.best_kg, this.#units);
    this.size = new Slide({
      label: _("Load"), low: Math.min(low, this.#own[index].load_kg), high: Math.max(high, this.#own[index].load_kg), step,
      value: this.#own[index].load_kg, show: (load_kg) => load(load_kg, this.#units), onChange: (load_kg) => this.#change(changed(this.#own, this.#picked, { load_kg: Math.max(1, load_kg) })),
    });
    const rests = restQuestion();
    this.rest = index < this.#own.length - 1 ? new Slide({
      label: _("Rest after it"), ...rests, next: (rest_s, direction) => stepped(rest_s, direction, rests),
      value: this.#own[index].rest_s, show: span, onChange: (rest_s) => this.#change(changed(this.#own, this.#picked, { rest_s })),
    }) : null;
    const which = el("p", { class: "own__which" }, _("Attempt {place} of {all}", { place: number(index + 1), all: number(this.#own.length) }));
    this.editor.replaceChildren(...[which, this.size.node, this.rest?.node, this.#tools(index)].filter(Boolean));
  }

  #tools(index) {
    const button = (text, act, hook) => el("button", { type: "button", class: "button button--small", "data-own-tool": hook, onclick: act }, text);
    return el("div", { class: "row" }, button(_("Add a heavier one"), () => this.#add(index), "add"), this.#own.length > 1 && button(_("Remove"), () => this.#remove(index), "remove"));
  }

  #add(index) {
    this.#picked = index + 1;
    this.#change(added(this.#own, index, loadStep(this.#units)));
    this.#open();
  }

  #remove(index) {
    this.#picked = null;
    this.#change(removed(this.#own, index));
    this.#open();
    this.row.querySelectorAll("button")[Math.max(0, index - 1)]?.focus();
  }

  #change(own) {
    const same = own.length === this.#own.length;
    this.#own = own;
    if (this.#picked !== null) this.size?.set(own[this.#picked].load_kg);
    if (this.#picked !== null) this.rest?.set(own[this.#picked].rest_s);
    inPlace(this.editor, () => (same ? this.#paint() : this.#draw()));
    this.#onChange(own);
  }
}
