/** A number with large buttons and a field that also takes typing. Empty means "not sure": the usual number stands in. */
import { el, write } from "../lib/dom.js";
import { clock, readNumber, typedNumber } from "../lib/format.js";
import { faultOf, stepped } from "../lib/numbers.js";
import { _ } from "../lib/words.js";

let count = 0;

export class Stepper {
  #question;
  #onChange;
  #value;

  /** `question`: {low, high, step, default, clock} in the shown unit; `says` its own words for some faults, `{too_low: ({low, high}) => ...}`.
      `fault`: what is wrong with the value from the start, as a code. `onChange` gets a number or null. */
  constructor({ label, unit, question, value, onChange, fault = null, extra = [] }) {
    this.#question = question;
    this.#onChange = onChange;
    this.#value = value;
    const id = `stepper-${count += 1}`;
    this.input = el("input", {
      class: "stepper__value", id, type: "text", inputmode: question.clock ? "text" : "decimal", autocomplete: "off", size: 5,
      placeholder: this.#show(question.default), "aria-describedby": `${id}-error`, onchange: () => this.#typed(),
    });
    this.error = el("p", { class: "field__error", id: `${id}-error`, role: "alert", hidden: true });
    this.node = el("div", { class: "field" },
      el("label", { class: "field__label", for: id }, label), extra,
      el("div", { class: "stepper" },
        el("button", { type: "button", class: "stepper__less", "aria-label": _("Less: {label}", { label }), onclick: () => this.#step(-1) }, "\u2212"),
        el("span", { class: "stepper__middle" }, this.input, unit && el("span", { class: "stepper__unit" }, unit)),
        el("button", { type: "button", class: "stepper__more", "aria-label": _("More: {label}", { label }), onclick: () => this.#step(1) }, "+")),
      this.error);
    this.set(value);
    this.#fault(fault);
  }

  /** Show a value without telling anybody. */
  set(value) {
    this.#value = value;
    this.input.value = value === null ? "" : this.#show(value);
    this.#fault(null);
  }

  #show(value) {
    if (value === null || value === undefined) return "";
    return this.#question.clock ? clock(value) : typedNumber(value);
  }

  #step(direction) {
    this.set(stepped(this.#value ?? this.#question.default ?? this.#question.low, direction, this.#question));
    this.#onChange(this.#value);
  }

  #typed() {
    if (this.input.value.trim() === "") return this.#take(null);
    const value = readNumber(this.input.value);
    const fault = faultOf(value, this.#question);
    return fault ? this.#fault(fault) : this.#take(value);
  }

  #take(value) {
    this.set(value);
    this.#onChange(value);
  }

  /** What was typed stays in the field; only the plan goes on with the number before. */
  #fault(code) {
    const [low, high] = [this.#show(this.#question.low), this.#show(this.#question.high)];
    const texts = {
      no_number: () => _("This is not a number we can read. Digits only, such as 8 or 2.5."),
      too_low: () => _("That is below {low}, the least we can plan with.", { low }),
      too_high: () => _("That is above {high}, the most we can plan with.", { high }),
      ...this.#question.says,
    };
    write(this.error, code && texts[code]({ low, high }));
    if (code) this.input.setAttribute("aria-invalid", "true");
    else this.input.removeAttribute("aria-invalid");
  }
}
