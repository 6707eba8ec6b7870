/** Why the plan is as it is, what to mind, and which numbers were filled in for want of the athlete's own. */
import { el } from "../lib/dom.js";
import { _, say } from "../lib/words.js";

const list = (codes) => el("ul", {}, codes.map((code) => el("li", {}, say(code))));

export function planWarnings(plan) {
  return (plan.warnings ?? []).map((warning) => el("p", { class: "notice notice--warn", "data-warning": warning.code }, say(warning)));
}

export function planReasons(plan) {
  if (!plan.reasons?.length) return null;
  return el("section", { class: "stack stack--s" }, el("h2", {}, _("What limits you, and why this plan")), list(plan.reasons));
}

export function planFilled(plan) {
  if (!plan.filled?.length) return null;
  return el("section", { class: "stack stack--s", "data-filled": "" },
    el("h2", {}, _("Numbers we filled in")),
    el("p", { class: "soft" }, _("You did not give these, so the plan uses what is usual and is more careful for it.")),
    list(plan.filled), el("p", {}, el("a", { href: "#numbers" }, _("Give your own"))));
}
