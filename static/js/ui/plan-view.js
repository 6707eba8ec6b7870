/** The plan screen: asks the engine, shows the answer at once, then fills in the comparisons one by one. */
import { el, find, refill } from "../lib/dom.js";
import { OVERTAKEN, ask } from "../lib/engine.js";
import { canTry, judge, judgePlan, shownPlan } from "../lib/own-plan.js";
import { partWorkout, partsOf, withTitles } from "../lib/parts.js";
import { fromPlan } from "../lib/own.js";
import { _, say } from "../lib/words.js";
import { optionsTable, styleChoice } from "./options-table.js";
import { partBody, partHead, partWhy } from "./plan-parts.js";
import { planFilled } from "./plan-notes.js";
import { whyDetails } from "./why.js";

const STYLES = ["steady", "even", "bold"];

export class PlanView {
  #session;
  #numbers;
  #turn = 0;

  constructor(root, session) {
    this.root = root;
    this.#session = session;
    this.plan = null;    // as the engine made it
    this.shown = null;   // the same with the athlete's own break-up in it, where one is kept
    find("back-to-plan", root).addEventListener("click", () => session.change({ own: null }));
  }

  /** What the engine needs to judge a break-up. */
  get context() {
    return { workout: this.#session.workout, numbers: this.#numbers, settings: this.#session.settings() };
  }

  /** Make the plan anew. True when it is the newest asked for and could be made. */
  async renew(numbers) {
    this.#numbers = numbers;
    const turn = (this.#turn += 1);
    const plan = await this.#ask("plan", {});
    if (plan === OVERTAKEN) return false;
    const shown = plan.error ? null : await shownPlan(this.context, withTitles(plan, this.#session.workout), this.#session.state.own);
    if (turn !== this.#turn) return false;
    this.plan = plan.error ? null : plan;
    this.shown = shown;
    if (plan.error) this.#refuse(plan.error);
    else this.#show();
    this.#compare(turn, plan).catch(() => {});  // the comparison is a courtesy; the plan above stands
    return !plan.error;
  }

  #ask(slot, patch) {
    return ask(slot, "plan", this.#session.workout, this.#numbers, this.#session.settings(patch));
  }

  #refuse(error) {
    refill(find("plan-head", this.root), el("p", { class: "notice notice--warn" }, say(error), " ", el("a", { href: "#numbers" }, _("My numbers"))));
    for (const part of ["plan-body", "plan-why"]) refill(find(part, this.root));
    find("plan-own", this.root).hidden = true;
  }

  #show() {
    const { workout, athlete, state } = this.#session;
    const parts = partsOf(this.shown);
    const context = (index) => ({ workout: partWorkout(workout, index), option: state.option, units: athlete.units, why: this.#why() });
    refill(find("plan-head", this.root), parts.map((part, index) => partHead(part, index, parts.length)));
    refill(find("plan-body", this.root), parts.map((part, index) => partBody(part, index, parts.length, context(index))));
    refill(find("plan-why", this.root), parts.map((part, index) => partWhy(part, index, parts.length, context(index))), planFilled({ filled: parts.flatMap((part) => part.filled ?? []) }));
    find("plan-own", this.root).hidden = !canTry(workout, this.plan);
    find("back-to-plan", this.root).hidden = !this.shown.mine;
    this.root.dataset.planReady = String(this.#turn);
  }

  /** What stands behind a block's reasons: only where the whole can be judged. */
  #why() {
    if (!canTry(this.#session.workout, this.plan)) return null;
    const { plan, shown, context } = this;
    const blocks = shown.mine ? this.#session.state.own.blocks : fromPlan(plan);
    const tell = async (slot, changed) => {
      const before = shown.mine?.verdict ?? await judgePlan(context, plan);
      const verdict = await judge(slot, context, plan, changed);
      return verdict === OVERTAKEN || verdict.error ? verdict : { verdict, before };
    };
    return (block, rounds) => {
      const indexes = plan.blocks.flatMap((one, index) => (one.block === block.block && rounds.includes(one.round) ? [index] : []));
      return whyDetails(shown, block, indexes, { blocks, tell });
    };
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
      ...this.#session.options.map(({ key }) => key).filter((key) => !options.has(key)).map((option) => [options, option, { option }]),
    ];
    for (const [map, key, patch] of others) {
      const other = await this.#ask("compare", patch);
      if (turn !== this.#turn) return;
      map.set(key, other);
    }
    draw();
  }
}
