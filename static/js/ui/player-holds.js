/** Which hold felt best: asked at the step that tries them; the answer goes to the floor card. */
import { el, refill } from "../lib/dom.js";
import { _, holdName, movementName } from "../lib/words.js";

/** `onPick(movement, hold)`. Nothing is drawn for a step that tries no holds. */
export function askHold(place, step, chosen, onPick) {
  if (!step?.holds?.length) return place.replaceChildren();
  const best = chosen ?? step.hold;
  const button = (hold) => el("button", { type: "button", class: "button button--small", "data-hold": hold, "aria-pressed": String(hold === best), onclick: () => onPick(step.movement, hold) }, holdName(step.movement, hold));
  return refill(place, el("fieldset", { class: "holds" },
    el("legend", {}, _("Which felt best? It goes on your card. {movement}:", { movement: movementName(step.movement) })), step.holds.map(button)));
}
