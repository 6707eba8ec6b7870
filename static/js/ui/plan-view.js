/** The plan screen: asks the engine, shows the answer at once, then fills in the comparisons one by one. */
import { el, find, refill } from "../lib/dom.js";
import { OVERTAKEN, ask } from "../lib/engine.js";
import { _, say } from "../lib/words.js";
import { curve } from "./curve.js";
import { optionsTable, styleChoice } from "./options-table.js";
import { planBlocks } from "./plan-blocks.js";
import { planHead } from "./plan-head.js";
import { planFilled, planReasons, planWarnings } from "./plan-notes.js";

const STYLES = ["steady", "even", "bold"];

export class PlanView {
  #session;
  #numbers;
  #turn = 0;

  constructor(root, session) {
    this.root = root;
    this.#session = session;
    this.plan = null;
  }

  /** Make the plan anew. True when it is the newest asked for and could be made. */
  async renew(numbers) {
    this.#numbers = numbers;
    const turn = (this.#turn += 1);
    const plan = await this.#ask("plan", {});
    if (plan === OVERTAKEN) return false;
    this.plan = plan.error ? null : plan;
    if (plan.error) this.#refuse(plan.error);
    else this.#show(plan);
    this.#compare(turn, plan).catch(() => {});  // the comparison is a courtesy; the plan above stands
    return !plan.error;
  }

  #ask(slot, patch) {
    return ask(slot, "plan", this.#session.workout, this.#numbers, this.#session.settings(patch));
  }

  #refuse(error) {
    refill(find("plan-head", this.root), el("p", { class: "notice notice--warn" }, say(error), " ", el("a", { href: "#numbers" }, _("My numbers"))));
    for (const part of ["plan-body", "plan-why"]) refill(find(part, this.root));
  }

  #show(plan) {
    const { workout, athlete, state } = this.#session;
    const context = { workout, option: state.option, units: athlete.units };
    refill(find("plan-head", this.root), planHead(plan));
    refill(find("plan-body", this.root), planBlocks(plan, context));
    refill(find("plan-why", this.root), planWarnings(plan), planReasons(plan), curve(plan), planFilled(plan));
    this.root.dataset.planReady = String(this.#turn);
  }

  /** Other styles and options, one after the other, so that a tap is never kept waiting. */
  async #compare(turn, plan) {
    const { workout, state } = this.#session;
    const styles = new Map([[state.style, plan]]);
    const options = new Map([[state.option, plan]]);
    const draw = () => {
      refill(find("plan-styles", this.root), styleChoice(this.#session, styles));
      refill(find("plan-options", this.root), optionsTable(this.#session, options));
    };
    draw();
    const others = [
      ...STYLES.filter((style) => !styles.has(style)).map((style) => [styles, style, { style }]),
      ...workout.options.map(({ key }) => key).filter((key) => !options.has(key)).map((option) => [options, option, { option }]),
    ];
    for (const [map, key, patch] of others) {
      const other = await this.#ask("compare", patch);
      if (turn !== this.#turn) return;
      map.set(key, other);
    }
    draw();
  }
}
