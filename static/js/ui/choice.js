/** A row of choices, one of which holds. */
import { el } from "../lib/dom.js";

let count = 0;

/** `items`: [{key, name, big, note}], `big` a number that stands large. `onPick` gets the key. `tall`: one beneath the other; `pair`: two beside one another. */
export function choice({ legend, items, value, onPick, tall = false, pair = false }) {
  const name = `choice-${count += 1}`;
  const pick = (event) => onPick(event.target.value);
  const item = ({ key, name: text, big, note }) => el("label", { class: "choice__item" },
    el("input", { type: "radio", name, value: key, checked: key === value, onchange: pick }),
    el("span", { class: "choice__body" }, text, big && el("span", { class: "choice__big numeral" }, big), note && el("small", {}, note)));
  return el("fieldset", { class: `choice ${tall ? "choice--tall" : ""} ${pair ? "choice--pair" : ""} ${items.length === 4 ? "choice--four" : ""}` }, el("legend", {}, legend), items.map(item));
}
