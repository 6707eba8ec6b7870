/** The warm-up's screen: when it begins, what is different today, every step; and the player once it runs. */
import { find, refill, write } from "../lib/dom.js";
import { SteadyClock } from "../lib/player-clock.js";
import { minutesFor } from "../lib/player-plan.js";
import { WarmUpRun } from "../lib/player-run.js";
import { extrasAt, inOrder, totalSeconds } from "../lib/player-state.js";
import { _ } from "../lib/words.js";
import { heatLine } from "./heat.js";
import { planWarnings, whyList } from "./plan-notes.js";
import { askHold } from "./player-holds.js";
import { HeatMoved } from "./player-moved.js";
import { Player } from "./player.js";
import { Switches, signalsOf } from "./player-switches.js";
import { beforeIt, underWay } from "./warm-up-now.js";
import { stepList } from "./warm-up-steps.js";
import { askToday, todayOf } from "./warm-up-today.js";

const LOOK_MS = 1000;
const LATE_S = 30;   // so late, what has not begun is planned for the time that is left

export class WarmUp {
  #session;
  #door;
  #answer = null;
  #asked_min = null;
  #timer = null;

  /** `door`: {inputs(), make(patch)}; `make` asks the engine for a warm-up with these settings changed: {steps, …}, {error} or null.
      `common`: for a whole class, without anybody's own loads. */
  constructor(root, session, door, { clock = new SteadyClock(), common = false } = {}) {
    this.root = root;
    this.#session = session;
    this.#door = door;
    this.common = common;
    this.run = new WarmUpRun(session, clock, async (patch) => this.#good(await door.make(patch)));
    this.player = new Player(root, this.run, {
      view: () => this.#view, signals: () => signalsOf(session), extrasOf: (index) => extrasAt(this.run.kept.steps, index), onChange: (state) => this.#entered(state), onClose: () => this.#draw(), card: common ? null : "#card",
    });
    this.switches = new Switches(root, session, () => this.player.wake());
    this.moved = new HeatMoved(root, session, this.run, (heat, isCalled) => this.#move(heat, isCalled));
    find("warm-up-start", root).addEventListener("click", () => this.#start());
    find("warm-up-again", root).addEventListener("click", () => { this.run.end(); this.renew(); });
    find("warm-up-print", root).addEventListener("click", () => print());
    document.addEventListener("visibilitychange", () => this.#look());
    if (!common) askToday(find("warm-up-answers", root), session);
  }

  get #view() { return { units: this.#session.athlete.units, workout: this.#session.workout, common: this.common }; }

  /** Names what the engine is asked with; the heat's time, which only tells its hour, aside. */
  get #madeFor() {
    const [numbers, { heat_start, ...settings }] = this.#door.inputs();
    return JSON.stringify([numbers, settings, this.#session.workout.revision]);
  }

  #good(answer) { return answer && !answer.error ? answer : null; }

  /** Something it depends on changed. Before it begins the plan is made anew; under way only what is left. */
  async renew() {
    if (this.run.kept) await this.run.renew(this.#madeFor);
    else await this.#plan();
    this.#draw();
  }

  async #plan(starts = false) {
    this.#asked_min = minutesFor(this.run.heat_ms, todayOf(this.#session).minutes, this.run.now_ms, starts);
    const answer = await this.#door.make({ warm_up_min: this.#asked_min });
    if (answer) this.#answer = answer;
  }

  open(isOpen) {
    this.isOpen = isOpen;
    if (!isOpen) { this.player.leave(); clearTimeout(this.#timer); return; }
    this.run.forgetOld();
    if (this.run.kept && this.run.state.phase === "running") this.player.open();
    else this.renew();
    this.#look();
  }

  async #start() {
    if (signalsOf(this.#session).sound) this.player.wake();   // now, while the touch counts
    if (!this.run.kept) {
      await this.#plan(true);
      if (!this.#good(this.#answer)) return this.#draw();
      this.run.begin(this.#answer, this.#asked_min, this.#madeFor);
    }
    return this.player.open();
  }

  async #move(heat, isCalled) {
    await this.run.moveHeat(heat, isCalled);
    this.moved.draw();
    if (this.player.isOpen) this.player.open();
    else this.#draw();
  }

  /** Each second while the list is open: the countdown, and a plan that shrinks with the minutes left. */
  #look() {
    clearTimeout(this.#timer);
    if (!this.isOpen || document.hidden) return;
    if (!this.player.isOpen) {
      this.#drawNow();
      if (!this.run.kept && this.#toHeat_s !== null && this.#good(this.#answer)?.starts_s > this.#toHeat_s + LATE_S) this.renew();
    }
    this.#timer = setTimeout(() => this.#look(), LOOK_MS);
  }

  get #toHeat_s() { return this.run.heat_ms === null ? null : (this.run.heat_ms - this.run.now_ms) / 1000; }

  #steps() { return this.run.kept?.steps ?? this.#good(this.#answer)?.steps ?? []; }

  #entered(state) { this.#askHold(state.step); }

  #askHold(step) {
    const { holds } = this.#session.state;
    const pick = (movement, hold) => { this.#session.change({ holds: { ...this.#session.state.holds, [movement]: hold } }); this.#askHold(step); };
    askHold(find("player-ask", this.root), step, holds?.[step?.movement], pick);
  }

  #draw() {
    this.#drawNow();
    this.moved.draw();
    const made = this.run.kept ?? this.#good(this.#answer);
    const state = this.run.state;
    const onGo = state && ((index) => { this.run.tap("go", { index }); this.player.open(); });
    refill(find("warm-up-steps", this.root), made ? stepList(this.#steps(), { view: this.#view, state, onGo, before: this.#before(made) }) : []);
    refill(find("warm-up-checks", this.root), made && planWarnings(made), made && whyList(_("Why this warm-up"), made.reasons));
  }

  /** When a step begins before the heat; its own length where there is no heat. */
  #before(made) {
    if (this.run.heat_ms === null) return () => null;
    const steps = inOrder(made.steps);
    return (index) => made.ends_s + totalSeconds(steps.slice(index));
  }

  #drawNow() {
    write(find("warm-up-heat", this.root), heatLine(this.#session.state.heat));
    const { state } = this.run;
    const start = find("warm-up-start", this.root);
    find("warm-up-end", this.root).hidden = !state;
    start.hidden = state?.phase === "over" || (!state && !this.#good(this.#answer));
    start.textContent = state ? _("Back to the step under way") : _("Start the warm-up");
    const now = find("warm-up-now", this.root);
    now.dataset.phase = state?.phase ?? "before";
    refill(now, state ? underWay(state, this.#toHeat_s, this.#view) : beforeIt(this.#answer, this.#toHeat_s));
  }
}
