/** A number to push about: a slide for the finger, a button on either side for one step, the value in words. All three by keyboard too. */
import { el } from "../lib/dom.js";
import { _ } from "../lib/words.js";

let count = 0;

export class Slide {
  #onChange;
  #show;
  #value;

  /** `next(value, direction)`: what a tap leads to; one `step` where nothing is said. */
  constructor({ label, low, high, step, value, show, onChange, next = (old, direction) => old + direction * step }) {
    this.#onChange = onChange;
    this.#show = show;
    const id = `slide-${count += 1}`;
    this.input = el("input", { class: "slide__range", id, type: "range", min: low, max: high, step, oninput: () => this.#take(Number(this.input.value)) });
    this.output = el("output", { class: "slide__value numeral", for: id });
    const tap = (direction) => this.#take(next(this.#value, direction));
    this.node = el("div", { class: "slide" },
      el("div", { class: "slide__head" }, el("label", { class: "field__label", for: id }, label), this.output),
      el("div", { class: "slide__body" },
        el("button", { type: "button", class: "slide__tap", "aria-label": _("Less: {label}", { label }), onclick: () => tap(-1) }, "\u2212"),
        this.input,
        el("button", { type: "button", class: "slide__tap", "aria-label": _("More: {label}", { label }), onclick: () => tap(1) }, "+")));
    this.set(value);
  }

  #take(value) {
    if (value !== this.#value) this.#onChange(value);
  }

  /** Show a value without telling anybody; a tap may go beyond the slide's end. */
  set(value) {
    if (value === undefined) return;
    this.#value = value;
    if (value > Number(this.input.max)) this.input.max = value;
    this.input.value = value;
    this.output.textContent = this.#show(value);
    this.input.setAttribute("aria-valuetext", this.output.textContent);
  }
}
