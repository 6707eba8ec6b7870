/** The plan screen: asks the engine, shows the answer at once, then fills in the comparisons one by one. */
import { el, find, refill } from "../lib/dom.js";
import { OVERTAKEN, ask } from "../lib/engine.js";
import { canTry, judge, judgePlan, shownPlan } from "../lib/own-plan.js";
import { partWorkout, partsOf, withTitles } from "../lib/parts.js";
import { fromPlan, keptBlocks } from "../lib/own.js";
import { _, say } from "../lib/words.js";
import { optionsTable, styleChoice } from "./options-table.js";
import { partBody, partHead, partWhy } from "./plan-parts.js";
import { planFilled } from "./plan-notes.js";
import { whyAttempts } from "./why-attempts.js";
import { whyDetails } from "./why.js";

const STYLES = ["steady", "even", "bold"];

export class PlanView {
  #session;
  #numbers;
  #turn = 0;
  #styles = new Map();
  #options = new Map();
  #counsel = null;

  constructor(root, session) {
    this.root = root;
    this.#session = session;
    this.plan = null;    // as the engine made it
    this.shown = null;   // the same with the athlete's own break-up in it, where one is kept
    find("back-to-plan", root).addEventListener("click", () => session.change({ own: null }));
  }

  /** What the engine needs to judge a break-up of one part; a workout without parts is its own only one. */
  contextOf(index) {
    return { workout: partWorkout(this.#session.workout, index), numbers: this.#numbers, settings: this.#session.settings() };
  }

  /** The plan with what is kept of one's own in it, part by part. */
  async #withOwn(plan) {
    const { workout, state } = this.#session;
    const parts = await Promise.all(partsOf(withTitles(plan, workout)).map((part, index) => shownPlan(this.contextOf(index), part, state.own, index)));
    return plan.parts ? { ...plan, parts } : parts[0];
  }

  /** Make the plan anew. True when it is the newest asked for and could be made. */
  async renew(numbers) {
    this.#numbers = numbers;
    const turn = (this.#turn += 1);
    const plan = await this.#ask("plan", {});
    if (plan === OVERTAKEN) return false;
    const shown = plan.error ? null : await this.#withOwn(plan);
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
    const context = (index) => ({ workout: partWorkout(workout, index), option: state.option, units: athlete.units, why: this.#why(index) });
    refill(find("plan-head", this.root), parts.map((part, index) => partHead(part, index, parts.length)));
    refill(find("plan-body", this.root), parts.map((part, index) => partBody(part, index, parts.length, context(index))));
    refill(find("plan-why", this.root), parts.map((part, index) => partWhy(part, index, parts.length, context(index))), planFilled({ filled: parts.flatMap((part) => part.filled ?? []) }));
    find("plan-own", this.root).hidden = !partsOf(this.plan).some(canTry);
    find("back-to-plan", this.root).hidden = !parts.some(({ mine }) => mine);
    this.root.dataset.planReady = String(this.#turn);
  }

  /** What stands behind a block's reasons, or an attempt: small changes of it, judged. */
  #why(index) {
    const [plan, shown] = [this.plan, this.shown].map((whole) => partsOf(whole)[index]);
    if (!canTry(plan)) return null;
    const context = this.contextOf(index);
    const blocks = shown.mine ? keptBlocks(this.#session.state.own, plan.option, index) : fromPlan(plan);
    const tell = async (slot, changed) => {
      const before = shown.mine?.verdict ?? await judgePlan(context, plan);
      const verdict = await judge(`${slot}-${index}`, context, plan, changed);
      return verdict === OVERTAKEN || verdict.error ? verdict : { verdict, before };
    };
    if (plan.attempts) return (place) => whyAttempts(shown, place, { blocks, tell, units: this.#session.athlete.units });
    return (block, rounds) => {
      const indexes = plan.blocks.flatMap((one, at) => (one.block === block.block && rounds.includes(one.round) ? [at] : []));
      return whyDetails(shown, block, indexes, { blocks, tell });
    };
  }

  #draw() {
    refill(find("plan-styles", this.root), styleChoice(this.#session, this.#styles));
    refill(find("plan-options", this.root), optionsTable(this.#session, this.#options, this.#counsel));
  }

  /** Other styles and options, one after the other, so that a tap is never kept waiting. */
  async #compare(turn, plan) {
    const { state } = this.#session;
    this.#styles = new Map([[state.style, plan]]);
    this.#options = new Map([[state.option, plan]]);
    this.#counsel = null;
    this.#draw();
    const others = [
      ...STYLES.filter((style) => style !== state.style).map((style) => [this.#styles, style, { style }]),
      ...this.#session.options.map(({ key }) => key).filter((key) => key !== state.option).map((option) => [this.#options, option, { option }]),
    ];
    for (const [map, key, patch] of others) {
      const other = await this.#ask("compare", patch);
      if (turn !== this.#turn) return;
      map.set(key, other);
    }
    this.#draw();
    await this.renewAdvice();
  }

  /** Which option, from the plans made: also anew when there is a heat after all, or none. */
  async renewAdvice() {
    const keys = this.#session.options.map(({ key }) => key);
    const plans = keys.map((key) => this.#options.get(key));
    if (keys.length < 2 || plans.some((plan) => !plan || plan.error)) return;
    const counsel = await ask("advise", "advise", this.#session.workout, plans, this.#session.settings().just_for_me);
    if (counsel === OVERTAKEN || counsel.error) return;
    this.#counsel = counsel;
    this.#draw();
  }
}
