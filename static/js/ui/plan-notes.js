/** Why the plan is as it is, what to mind, and which numbers were filled in for want of the athlete's own. */
import { el } from "../lib/dom.js";
import { _, say } from "../lib/words.js";
import { numberName } from "./number-name.js";

const SAID_BELOW = "number_guessed";  // the filled numbers have a list of their own

export const NARROWS = "test_narrows";   // said at the head, beside the range it narrows
export const BREAKS = "interval_breaks"; // said there as well: what to do then

const list = (lines) => el("ul", {}, lines.map((line) => el("li", {}, line)));

export function planWarnings(plan) {
  const warnings = plan.warnings.filter((warning) => warning.code !== SAID_BELOW);
  if (warnings.length === 0) return null;
  return el("section", { class: "notice stack stack--s", "data-warnings": "" }, el("p", { class: "notice__title" }, _("Mind this")), list(warnings.map(say)));
}

export function whyList(title, reasons) {
  return reasons.length ? el("section", { class: "stack stack--s" }, el("h2", {}, title), list(reasons.map(say))) : null;
}

export const planReasons = (plan) => whyList(_("What limits you, and why this plan"), plan.reasons.filter(({ code }) => ![NARROWS, BREAKS].includes(code)));

export function planFilled(plan) {
  if (!plan.filled?.length) return null;
  const names = plan.filled.map(({ movement, number }) => numberName({ movement, kind: number }));
  return el("section", { class: "stack stack--s", "data-filled": "" },
    el("h2", {}, _("Numbers we filled in")),
    el("p", { class: "soft" }, _("You did not give these, so the plan uses what is usual and is more careful for it.")),
    list([...new Set(names)]), el("p", { class: "row", "data-no-print": "" }, el("a", { href: "#numbers" }, _("Give your own"))));
}
