/** "My numbers": who you are for this workout, then only the numbers that decide it. */
import { el, find, refill, write } from "../lib/dom.js";
import { isClose } from "../lib/heat.js";
import { clock, fromShown, shownUnit, toShown } from "../lib/format.js";
import { answerKey, faultOf, inUnits, isPersonal, isTime, missingBeside } from "../lib/numbers.js";
import { _, say } from "../lib/words.js";
import { choice } from "./choice.js";
import { howToFind } from "./find-out.js";
import { numberName } from "./number-name.js";
import { Stepper } from "./stepper.js";

const named = (list) => list.map(({ key, name }) => ({ key, name: _(name) }));

function who(session) {
  const { workout, state } = session;
  const divisions = workout.divisions.length > 1 && choice({
    legend: _("Division"), items: named(workout.divisions), value: state.division, onPick: (division) => session.change({ division }) });
  const options = session.options.length > 1 && choice({
    legend: _("Option"), items: named(session.options), value: state.option, onPick: (option) => session.change({ option }) });
  const levels = choice({
    legend: _("How long have you trained like this?"), value: session.athlete.level, onPick: (level) => session.changeAthlete({ level }),
    items: [{ key: "new", name: _("New to it") }, { key: "regular", name: _("A while") }, { key: "keen", name: _("Years") }, { key: "expert", name: _("I compete") }] });
  return [divisions || null, options || null, levels];
}

function unitChoices(session) {
  const units = session.athlete.units;
  const pick = (part) => (value) => session.changeAthlete({ units: { ...session.athlete.units, [part]: value } });
  return [
    choice({ legend: _("Loads in"), items: [{ key: "kg", name: "kg" }, { key: "lb", name: "lb" }], value: units.mass, onPick: pick("mass") }),
    choice({ legend: _("Lengths in"), items: [{ key: "m", name: "m" }, { key: "ft", name: "ft" }], value: units.length, onPick: pick("length") }),
  ];
}

function unitName(question, units) {
  const words = { reps: _("reps"), cal: _("calories"), s: isTime(question) ? _("min:s") : _("s") };
  return words[question.unit] ?? shownUnit(question.unit, units);
}

/** A second effort and the second set of the repeat test are held against the first: words of their own for what does not go with it. */
function ownFaults({ kind, beside_m, beside_s }) {
  const tooFar = ({ low, high }) => _("This does not go with what you did in {time}: it would have to be between {low} and {high}. Change one of the two.", { time: clock(beside_s), low, high });
  const contradicts = ({ low, high }) => _("This does not go with your time over {m} m: it would have to be between {low} and {high}. Change one of the two.", { m: beside_m, low, high });
  if (beside_m) return { too_low: contradicts, too_high: contradicts };
  if (beside_s) return { too_low: tooFar, too_high: tooFar };
  return kind === "repeat_test" ? { too_high: () => say({ code: "repeat_test_bad" }) } : {};
}

/** Is the number by the athlete's own other number, or by the level? */
const usual = ({ by_single }, shown) => (by_single ? _("Not given: the plan takes {usual}, by your heaviest single.", { usual: shown }) : _("Not given: the plan takes {usual}, usual at your level.", { usual: shown }));

/** One question with its stepper, "not sure" and how to find the number. */
function ask(question, session) {
  const { units } = session.athlete;
  const kept = (isPersonal(question) ? session.athlete.answers : session.state.answers)[answerKey(question)] ?? null;
  const keep = (value) => {
    const answers = { [answerKey(question)]: value };
    if (isPersonal(question)) session.changeAthlete({ answers: { ...session.athlete.answers, ...answers } });
    else session.change({ answers: { ...session.state.answers, ...answers } });
    unsure.setAttribute("aria-pressed", String(value === null));
    filled.hidden = value !== null;
  };
  const stepper = new Stepper({
    label: numberName(question), unit: unitName(question, units), question: { ...inUnits(question, units), says: ownFaults(question) },
    value: kept === null ? null : toShown(kept, question.unit, units), fault: kept === null ? null : faultOf(kept, question),
    onChange: (shown) => keep(shown === null ? null : fromShown(shown, question.unit, units)),
  });
  const settle = (value) => { stepper.set(value === null ? null : toShown(value, question.unit, units)); keep(value); };
  const unsure = el("button", {
    type: "button", class: "button button--small", "aria-pressed": String(kept === null), onclick: () => settle(null),
  }, _("Not sure"));
  const filled = el("p", { class: "field__hint", hidden: kept !== null || question.default === null }, usual(question, stepper.input.placeholder));
  stepper.node.append(el("p", { class: "field__error", role: "status", "data-lacks": "", hidden: true }), unsure, filled);
  return el("div", { class: "question stack stack--s", "data-question": answerKey(question) }, stepper.node,
    howToFind(question, session.workout.movements[question.movement], { close: isClose(session.state.heat, Date.now()), settle }));
}

/** Say at its field where an answer does not count yet, for want of another. */
export function tellWhatLacks(root, session, questions) {
  for (const question of questions) {
    const missing = missingBeside(question, session.state.answers, questions);
    const at = root.querySelector(`[data-question="${answerKey(question)}"]`);
    if (at) write(find("lacks", at), missing && _("This does not count yet: give “{number}” too.", { number: numberName(missing) }));
  }
}

/** Draw the screen anew: the questions depend on option, division and level. */
export function showNumbers(root, session, questions) {
  const first = questions.filter((question) => question.needed);
  const sharper = questions.filter((question) => !question.needed);
  refill(find("numbers-who", root), who(session));
  refill(find("numbers-needed", root), first.map((question) => ask(question, session)));
  find("numbers-sharper", root).hidden = sharper.length === 0;
  refill(find("numbers-more", root), sharper.map((question) => ask(question, session)));
  if (find("numbers-more", root).querySelector("[aria-invalid]")) find("numbers-sharper", root).open = true;
  refill(find("numbers-units", root), unitChoices(session));
  tellWhatLacks(root, session, questions);
}
