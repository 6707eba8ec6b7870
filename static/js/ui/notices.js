/** Messages at the top of the page. Each has a key: the same message is never there twice. */
import { el } from "../lib/dom.js";

export class Notices {
  #root;
  #shown = new Map();

  constructor(root) { this.#root = root; }

  show(key, text, { tone = "", action = null, label = "" } = {}) {
    this.hide(key);
    const button = action && el("button", { type: "button", class: "button button--small", onclick: action }, label);
    const notice = el("div", { class: `notice ${tone && `notice--${tone}`} stack stack--s`, "data-notice": key }, el("p", {}, text), button);
    this.#shown.set(key, notice);
    this.#root.append(notice);
  }

  hide(key) {
    this.#shown.get(key)?.remove();
    this.#shown.delete(key);
  }
}
