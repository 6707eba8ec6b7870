/** Building elements. Text only ever becomes a text node, never markup. */

const SVG = "http://www.w3.org/2000/svg";

function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
    else if (value === true) node.setAttribute(name, "");
    else if (value !== false && value !== null && value !== undefined) node.setAttribute(name, value);
  }
  node.append(...children.flat(2).filter((child) => child !== null && child !== undefined && child !== "" && child !== false));
  return node;
}

export const el = (tag, attributes = {}, ...children) => fill(document.createElement(tag), attributes, children);

export const svg = (tag, attributes = {}, ...children) => fill(document.createElementNS(SVG, tag), attributes, children);

export const find = (hook, root = document) => root.querySelector(`[data-${hook}]`);

export const findAll = (hook, root = document) => [...root.querySelectorAll(`[data-${hook}]`)];

/** Write text into a hook's element, and show the element only while there is something in it. */
export function write(node, text) {
  node.textContent = text ?? "";
  node.hidden = !text;
}

const FOCUSABLE = "a[href], button, input, select, textarea, summary";

/** Put other children in, and the focus and what was unfolded back as they were: redrawing must not throw a keyboard out of its place. */
export function refill(node, ...children) {
  const held = [...node.querySelectorAll(FOCUSABLE)].indexOf(document.activeElement);
  const opened = [...node.querySelectorAll("details")].map((one) => one.open);
  node.replaceChildren(...children.flat(2).filter(Boolean));
  node.querySelectorAll("details").forEach((one, index) => { one.open = Boolean(opened[index]); });
  if (held >= 0) node.querySelectorAll(FOCUSABLE)[held]?.focus({ preventScroll: true });
}

/** Do what may change heights above this element, and scroll so that it stays where it is: a finger may be on it. */
export function inPlace(node, act) {
  const before_px = node.getBoundingClientRect().top;
  act();
  const moved_px = node.getBoundingClientRect().top - before_px;
  if (moved_px !== 0) scrollBy({ top: moved_px, behavior: "instant" });
}
