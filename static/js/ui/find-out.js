/** How to find a number: by remembering, by three easy reps, or, when the heat is days away, by a short self-test. */
import { el } from "../lib/dom.js";
import { Beeps } from "../lib/beeps.js";
import { clock } from "../lib/format.js";
import { _ } from "../lib/words.js";
import { Stepper } from "./stepper.js";

const EASY_REPS = 3;
const REPEAT_REST_S = 60;

const steps = (...texts) => el("ol", {}, texts.map((text) => el("li", {}, text)));

/** Three easy reps say enough: what was left is added to them. */
function threeEasy(question, settle) {
  const stepper = new Stepper({
    label: _("How many more could you have done?"), unit: _("reps"), value: null,
    question: { low: 0, high: question.high - EASY_REPS, step: 1, default: Math.max(0, (question.default ?? EASY_REPS) - EASY_REPS) },
    onChange: (left) => settle(left === null ? null : left + EASY_REPS),
  });
  return [el("p", {}, _("After a few easy minutes: three smooth reps, well short of hard. Then stop and be honest.")), stepper.node];
}

/** Sixty seconds between the two sets of the repeat test. */
function restCountdown() {
  const digits = el("p", { class: "numeral numeral--huge", role: "timer" }, clock(REPEAT_REST_S));
  const beeps = new Beeps();
  let ends_ms = 0;
  const tick = () => {
    const left_s = Math.max(0, (ends_ms - Date.now()) / 1000);
    digits.textContent = clock(Math.ceil(left_s));
    beeps.plan(digits.isConnected ? [{ at_ms: ends_ms, kind: "go" }] : [], Date.now());
    if (left_s > 0 && digits.isConnected) setTimeout(tick, 250);
  };
  const start = () => { beeps.wake(); ends_ms = Date.now() + REPEAT_REST_S * 1000; tick(); };
  return [digits, el("button", { type: "button", class: "button", onclick: start }, _("Start the minute"))];
}

function selfTest(question) {
  const stop = _("Stop at the first rep you would not show a judge. Do not grind.");
  if (question.kind === "repeat_test") {
    const rest = [_("Rest exactly one minute."), _("One more set. This second number is the one to enter.")];
    return [steps(_("Warm up easily for five minutes."), _("One set, as many as you can with good form."), stop, ...rest), restCountdown()];
  }
  if (question.kind === "one_rep_max") {
    return [steps(_("Warm up easily for five minutes."), _("Singles that climb, two or three minutes apart: half of what you expect, then 70, 80, 90 percent, then small steps."),
      _("Only with somebody who knows how to spot, or a free space to drop it."), _("Stop at the first one that gets slow or loses its form. Do not grind."), _("Enter the last good one. Leave two easy days after it."))];
  }
  return [steps(_("Warm up easily for five minutes."), _("One set, as many as you can with good form."), stop, _("Enter the number. Leave two easy days after it."))];
}

const lasting = {
  steady_s: () => el("p", {}, _("Think of the last time you did many without a break: how long was it until you had to stop?")),
  long_effort: () => el("p", {}, _("As many as you once did in that time, breaks allowed. Give both, the short and the long one: together they say what you can keep up.")),
};

const recall = () => el("p", {}, _("Your best in one go in the last three months. Older than that counts for less: take a little off."));

/** `close`: the heat is near, so nothing maximal. `settle` takes the found number. */
export function howToFind(question, movement, { close, settle }) {
  const hint = movement?.hint ? el("p", {}, _(movement.hint)) : null;
  const local = question.kind === "max_unbroken" && question.unit === "reps";
  const lasts = lasting[question.kind]?.();
  const maximal = question.maximal && question.kind !== "effort" && !lasts;
  const ways = lasts ? [lasts] : [hint, question.maximal ? recall() : null];
  if (local && question.high > EASY_REPS) ways.push(el("h2", { class: "h3" }, _("Three easy reps")), ...threeEasy(question, settle));
  if (maximal && !close) ways.push(el("h2", { class: "h3" }, _("A short self-test")), ...selfTest(question));
  if (maximal && close) ways.push(el("p", { class: "soft" }, _("Your heat is less than three days away, so no all-out test now.")));
  if (ways.every((way) => way === null)) return null;
  return el("details", { "data-how": question.kind }, el("summary", {}, _("How do I find this?")), el("div", { class: "stack" }, ways));
}
