/** Every option side by side, and the three styles: what each would likely bring. */
import { el } from "../lib/dom.js";
import { _, say } from "../lib/words.js";
import { choice } from "./choice.js";
import { partsOf } from "../lib/parts.js";
import { barestScore, scoreRange, shortScore } from "../lib/score-words.js";

/** `plans`: Map from option key to a plan, or to an error, or nothing yet. */
export function optionsTable(session, plans) {
  const { options, state } = session;
  if (options.length < 2) return null;
  const items = options.map(({ key, name }) => {
    const plan = plans.get(key);
    const note = !plan ? _("working it out") : plan.error ? say(plan.error) : `${shortScore(plan)} (${scoreRange(plan)})`;
    return { key, name: _(name), note };
  });
  return choice({ legend: _("Every option, for you"), items, value: state.option, tall: true, onPick: (option) => session.change({ option }) });
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
  return el("div", { class: "stack stack--s" }, picker, same ? el("p", { class: "soft" }, _("All three come out the same here.")) : null);
}
