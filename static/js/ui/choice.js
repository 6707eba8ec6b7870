/** A row of choices, one of which holds. */
import { el } from "../lib/dom.js";

let count = 0;

/** `items`: [{key, name, note}]. `onPick` gets the key. */
export function choice({ legend, items, value, onPick, tall = false }) {
  const name = `choice-${count += 1}`;
  const pick = (event) => onPick(event.target.value);
  const item = ({ key, name: text, note }) => el("label", { class: "choice__item" },
    el("input", { type: "radio", name, value: key, checked: key === value, onchange: pick }),
    el("span", { class: "choice__body" }, text, note && el("small", {}, note)));
  return el("fieldset", { class: `choice ${tall ? "choice--tall" : ""} ${items.length === 4 ? "choice--four" : ""}` }, el("legend", {}, legend), items.map(item));
}
