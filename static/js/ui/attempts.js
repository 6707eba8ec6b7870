/** The attempts at a heaviest lift: load, when to be at the bar, the rest after it, and how likely it goes. */
import { goes } from "../lib/attempt-words.js";
import { el } from "../lib/dom.js";
import { number, span } from "../lib/format.js";
import { _, loadName } from "../lib/words.js";

/** To five seconds: nobody counts a rest between heavy lifts closer; when to be at the bar says the rest. */
const aboutRest = (rest_s) => span(Math.round(rest_s / 5) * 5);

function attempt(one, index, why) {
  const { load_kg, rest_s } = one;
  return el("li", { class: "attempt", "data-attempt": "" },
    el("span", { class: "block__place numeral", "aria-hidden": "true" }, number(index + 1)),
    el("div", {},
      el("p", { class: "numeral block__big" }, loadName(load_kg)),
      el("p", { class: "block__says" }, goes(one)),
      rest_s > 0 && el("p", {}, _("Then rest about {time}.", { time: aboutRest(rest_s) })), why?.(index)));
}

/** `why(place)` makes what is unfolded below an attempt. */
export function attemptList({ attempts }, why) {
  return el("section", { class: "stack" }, el("h2", {}, _("Your attempts")), el("ol", { class: "attempts stack" }, attempts.map((one, index) => attempt(one, index, why))));
}
