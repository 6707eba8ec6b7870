/** One block of an own break-up: its sets to tap, and beneath them what can be done to the one that was tapped. */
import { el, inPlace, refill } from "../lib/dom.js";
import { number, span } from "../lib/format.js";
import { added, alike, nextRest, removed, rested, resized, restQuestion } from "../lib/own-edits.js";
import { fitted, gap } from "../lib/own.js";
import { _, amount, movementName, sizeName } from "../lib/words.js";
import { Slide } from "./slide.js";

const MOST_SINGLY = 14;  // more sets than this are shown, and changed, counted together

const around = (own, index) => (own.sets.length > MOST_SINGLY ? alike(own, index) : { from: index, to: index });

/** Runs of sets to tap: each on its own, or those alike together where there are many. */
function runs(own) {
  const found = [];
  for (let from = 0; from < own.sets.length; from = found.at(-1).to + 1) found.push({ from, to: around(own, from).to });
  return found;
}

export class OwnBlock {
  #own;
  #place;
  #onChange;
  #range = null;

  /** `place`: see own.js. `onChange` gets the changed own block. */
  constructor({ own, place, title, heading, onChange }) {
    this.#own = own;
    this.#place = place;
    this.#onChange = onChange;
    this.row = el("ol", { class: "own__sets" });
    this.fault = el("div", { class: "own__fault row", role: "status" });
    this.editor = el("div", { class: "own__editor panel stack stack--s", hidden: true });
    this.node = el("section", { class: "block stack stack--s", "data-own-block": place.index },
      el(heading, { class: "block__title" }, movementName(place.movement), el("small", {}, title)), this.row, this.fault, this.editor);
    this.#draw();
  }

  #draw() {
    this.shown = runs(this.#own).map((run) => this.#set(run));
    refill(this.row, this.shown.map(({ node }) => node), el("li", {}, el("button", {
      type: "button", class: "own__add", "aria-label": _("Add a set at the end"), onclick: () => this.#add(this.#own.sets.length - 1),
    }, "+")));
    this.#paint();
  }

  #set({ from, to }) {
    const times = to - from + 1;
    const size = el("span");
    const rest = el("span", { class: "own__rest", "aria-hidden": "true" });
    const button = el("button", { type: "button", class: "own__set numeral", "data-own-set": from, onclick: () => this.#pick({ from, to }) },
      times > 1 && el("span", { class: "sets__times" }, `${number(times)}\u00d7`), size);
    return { from, to, size, rest, button, node: el("li", {}, button, to < this.#own.sets.length - 1 && rest) };
  }

  /** New numbers into the sets that stand there: quick enough for a finger on a slide. */
  #paint() {
    for (const { from, to, size, rest, button } of this.shown) {
      const rest_s = this.#own.rests_s[to];
      const words = { place: number(from + 1), last: number(to + 1), size: sizeName(this.#own.sets[from], this.#place.unit), time: rest_s === undefined ? "" : span(rest_s) };
      button.setAttribute("aria-label", to > from ? this.#together(from, words) : this.#alone(words));
      button.setAttribute("aria-pressed", String(this.#range !== null && from <= this.#range.to && to >= this.#range.from));
      size.textContent = words.size;
      rest.textContent = words.time;
    }
    refill(this.fault, this.#gapLine());
  }

  #alone(words) {
    return words.time === "" ? _("Set {place}: {size}", words) : _("Set {place}: {size}, then rest {time}", words);
  }

  #together(from, words) {
    const between = span(this.#own.rests_s[from]);
    return words.time === "" ? _("Sets {place} to {last}: {size} each, rest {between} between them", { ...words, between })
      : _("Sets {place} to {last}: {size} each, rest {between} between them, then rest {time}", { ...words, between });
  }

  #gapLine() {
    const left = gap(this.#own, this.#place);
    if (left === 0) return null;
    const text = left > 0 ? _("{amount} missing.", { amount: amount(left, this.#place.unit) }) : _("{amount} too many.", { amount: amount(-left, this.#place.unit) });
    return [el("strong", { "data-own-gap": left }, text), el("button", { type: "button", class: "button button--small", onclick: () => this.#change(fitted(this.#own, this.#place)) }, _("Make it fit at the end"))];
  }

  #pick(range) {
    const same = this.#range !== null && this.#range.from === range.from && this.#range.to === range.to;
    this.#range = same ? null : range;
    this.#open();
    this.#paint();
  }

  /** The editor is built once for a set and then only told new values: a finger on a slide must not lose it. */
  #open() {
    this.editor.hidden = this.#range === null;
    if (this.#range === null) return this.editor.replaceChildren();
    const { from, to } = this.#range;
    const place = this.#place;
    this.size = new Slide({
      label: _("Size"), low: place.grain, high: Math.max(place.grain, Math.min(place.total, Math.max(place.largest, this.#own.sets[from]))), step: place.grain,
      value: this.#own.sets[from], show: (size) => amount(size, place.unit), onChange: (size) => this.#change(resized(this.#own, this.#range, size, place)),
    });
    const { low, high } = restQuestion(place);
    this.rest = from < this.#own.rests_s.length ? new Slide({
      label: _("Rest after it"), low, high: Math.min(high, Math.max(60, this.#own.rests_s[from] * 2)), step: 1, next: (rest_s, direction) => nextRest(rest_s, direction, place),
      value: this.#own.rests_s[from], show: span, onChange: (rest_s) => this.#change(rested(this.#own, this.#range, rest_s, place)),
    }) : null;
    this.editor.replaceChildren(...[el("p", { class: "own__which" }, this.#which(from, to)), this.size.node, this.rest?.node, this.#tools()].filter(Boolean));
  }

  #which(from, to) {
    const params = { first: number(from + 1), last: number(to + 1), all: number(this.#own.sets.length) };
    return from === to ? _("Set {first} of {all}", params) : _("Sets {first} to {last} of {all}", params);
  }

  #tools() {
    const { from, to } = this.#range;
    const wide = alike(this.#own, from);
    const button = (text, act, hook) => el("button", { type: "button", class: "button button--small", "data-own-tool": hook, onclick: act }, text);
    return el("div", { class: "row" },
      button(_("Add one like it"), () => this.#add(to), "add"),
      this.#own.sets.length > 1 && button(_("Remove"), () => this.#remove(to), "remove"),
      (wide.from < from || wide.to > to) && button(_("All {n} alike", { n: number(wide.to - wide.from + 1) }), () => { this.#range = null; this.#pick(wide); }, "alike"));
  }

  #add(index) {
    const own = added(this.#own, index, this.#place);
    this.#range = around(own, index + 1);
    this.#change(own);
    this.#open();
  }

  #remove(index) {
    this.#change(removed(this.#own, index));
    this.#range = null;
    this.#open();
    this.#draw();
    this.row.querySelectorAll("button")[Math.max(0, index - 1)]?.focus();
  }

  #change(own) {
    const before = JSON.stringify(runs(this.#own));
    this.#own = own;
    if (this.#range) this.size?.set(own.sets[this.#range.from]);
    if (this.#range) this.rest?.set(own.rests_s[this.#range.from]);
    inPlace(this.editor, () => (JSON.stringify(runs(own)) === before ? this.#paint() : this.#draw()));
    this.#onChange(own);
  }
}
