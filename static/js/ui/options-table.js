/** Every option side by side, and the three styles: what each would likely bring. */
import { el } from "../lib/dom.js";
import { _, amount, movementName, say } from "../lib/words.js";
import { choice } from "./choice.js";
import { partsOf, withTitles } from "../lib/parts.js";
import { barestScore, scoreRange, whoFails } from "../lib/score-words.js";

/** What an option brings, as a choice: the score large, its range, and the gate where it has one. */
function itemOf({ key, name }, plan, gate) {
  if (!plan) return { key, name: _(name), note: _("working it out") };
  if (plan.error) return { key, name: _(name), note: say(plan.error) };
  const range = scoreRange(plan);
  const notes = [range && _("eight days of ten: {range}", { range }), gate && _("{movement} is a gate for you", { movement: movementName(gate) })];
  return { key, name: _(name), big: barestScore(plan), note: notes.filter(Boolean).join(". ") };
}

/** `plans`: Map from option key to a plan, or to an error, or nothing yet. `counsel`: what `advise` says, null before. */
export function optionsTable(session, plans, counsel) {
  const { options, state } = session;
  if (options.length < 2) return null;
  const nameOf = (key) => _(options.find((option) => option.key === key).name);
  const gateOf = (key) => counsel?.options.find(({ option }) => option === key)?.gate;
  const items = options.map((option) => itemOf(option, plans.get(option.key), gateOf(option.key)));
  const picker = choice({ legend: _("Every option, for you"), items, value: state.option, pair: true, onPick: (option) => session.change({ option }) });
  const told = counsel ? advised(counsel, nameOf, nameOf(options[0].key)) : waiting([...plans.values()].some((plan) => plan.error));
  return el("div", { class: "stack stack--s" }, picker, told);
}

/** Holds the place of the advice while the options are worked out; where one cannot be planned none is given. */
const waiting = (inVain) => (inVain ? null : el("section", { class: "notice stack stack--s which" }, el("h2", { class: "h3" }, _("Which option?")), el("p", { class: "soft" }, _("working it out"))));

/** "In place of 38 reps Handstand push-up: 57 reps Pike push-up." */
const thirdLine = ({ movement, amount: size, unit, easier, easier_amount }) => el("li", {}, _("In place of {amount} {movement}: {easier_amount} {easier}.", {
  amount: amount(size, unit), movement: movementName(movement), easier_amount: amount(easier_amount, unit), easier: _(easier),
}));

/** The advice in a sentence or two, the rule behind it, and a way round where every option is a gate. */
function advised({ advice, rule, training, third }, nameOf, first) {
  const sentences = [say({ ...advice, option: nameOf(advice.option) }), training && say({ code: "option_trains_more", option: nameOf(training) })];
  return el("section", { class: "notice stack stack--s which", "data-which": advice.code },
    el("h2", { class: "h3" }, _("Which option?")),
    el("p", {}, el("strong", {}, sentences.filter(Boolean).join(" "))),
    third.length > 0 && el("p", {}, _("Every option is a gate for you. Ask your coach for a third way:")),
    third.length > 0 && el("ul", {}, third.map(thirdLine)),
    el("p", { class: "soft" }, say({ code: rule, option: first }), " ", _("The choice is yours.")));
}

/** What an athlete would do: sets, rests and cadence, or loads; the chance of failing may differ all the same. */
const toDo = (plan) => partsOf(plan).map(({ blocks, attempts }) => [attempts, blocks.map(({ sets, rests_s, lead_s, seconds_per_unit }) => [sets, rests_s, lead_s, seconds_per_unit])]);

const allAlike = (plans) => plans.every((plan) => plan && !plan.error && JSON.stringify(toDo(plan)) === JSON.stringify(toDo(plans[0])));

export function styleChoice(session, plans) {
  const names = { steady: _("Steady"), even: _("Even"), bold: _("Bold") };
  const risks = { steady: _("hardly ever fails"), even: _("now and then"), bold: _("may fail") };
  const items = Object.keys(names).map((key) => {
    const plan = plans.get(key);
    return { key, name: names[key], note: plan && !plan.error ? barestScore(plan) : risks[key] };
  });
  const picker = choice({ legend: _("How much risk?"), items, value: session.state.style, onPick: (style) => session.change({ style }) });
  const same = allAlike(Object.keys(names).map((key) => plans.get(key)));
  const now = plans.get(session.state.style);
  return el("div", { class: "stack stack--s" }, picker,
    same && el("p", { class: "soft" }, _("All three come out the same here.")),
    now && !now.error && partsOf(withTitles(now, session.workout)).filter((part) => part.tried_on).map((part) => el("p", { class: "soft", "data-risk": "" },
      part.title && `${part.title}: `, whoFails(part.tried_on))));
}
