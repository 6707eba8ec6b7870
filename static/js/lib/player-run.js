/** A warm-up under way: what was tapped is kept on the phone at once, and the rest is fitted anew when time or heat change. */
import { called, fitted, heatFor, outOfTime, replanned } from "./player-plan.js";
import { inOrder, stateOf } from "./player-state.js";

const FORGOTTEN_MS = 7_200_000;  // so long after its end a warm-up without a heat is history

/** What a new fitting changed, as a code with its numbers, to be kept with the run and worded by the screen. */
function toldOf(reason, before, after, at_ms) {
  const n = inOrder(after.steps).length - inOrder(before.steps).length;
  const waits = after.steps.some((step) => step.code === "keep_warm");
  let kind = n < 0 ? "shortened" : "lengthened";
  if (waits && n > 0) kind = reason === "moved" ? "waits" : "early";
  if (n === 0) kind = "kept";
  if (reason === "called") kind = "called";
  return { kind, n: Math.abs(n), gap_s: Math.max(0, after.fitted_s), at_ms };
}

export class WarmUpRun {
  #session;
  #clock;
  #make;
  #fitting = false;

  /** `make(patch)` asks the engine for a warm-up with these settings changed; null when it gives none. */
  constructor(session, clock, make) {
    this.#session = session;
    this.#clock = clock;
    this.#make = make;
    const { kept } = this;
    if (kept) clock.resume(kept.ahead_ms ?? 0, kept.events.at(-1).at_ms);
  }

  get kept() {
    const run = this.#session.state.warmUp;
    return run?.steps ? run : null;
  }

  get now_ms() { return this.#clock.now(); }

  /** A heat at a time of day is at that time by the phone's own clock; one in some minutes is by ours. */
  get heat_ms() {
    const { heat } = this.#session.state;
    const set_ms = heatFor(heat, this.now_ms);
    if (set_ms === null) return null;
    const at_ms = heat.kind === "minutes" ? set_ms : set_ms + this.#clock.ahead_ms;
    const isAhead = at_ms > (this.kept?.events[0].at_ms ?? this.now_ms);   // one that was over before this began does not count
    return isAhead ? at_ms : null;
  }

  get state() { return this.kept ? stateOf(this.kept, this.now_ms, this.heat_ms) : null; }

  begin(answer, minutes, made_for) {
    const at_ms = this.now_ms;
    const { steps, ends_s, reasons, warnings } = answer;
    this.#keep({ steps, ends_s, reasons, warnings, minutes, made_for, for_ms: this.heat_ms, ahead_ms: this.#clock.ahead_ms, events: [{ kind: "start", at_ms }] });
  }

  end() { this.#session.change({ warmUp: null }); }

  tap(kind, extra = {}) {
    this.#keep({ ...this.kept, events: [...this.kept.events, { kind, at_ms: this.now_ms, ...extra }] });
  }

  forgetOld() {
    const { state } = this;
    if (state && state.phase === "over" && this.now_ms - Math.max(state.ends_ms, this.kept.for_ms ?? 0) > FORGOTTEN_MS) this.end();
  }

  /** Look whether the rest still fits; true when something was planned anew. */
  async keepUp() {
    if (!this.kept || this.#fitting) return false;
    this.#noteClock();
    const { heat_ms, kept } = this;
    if (heat_ms === null) return false;
    if (Math.abs(heat_ms - (kept.for_ms ?? 0)) > 1000) return this.#fit("moved");
    return outOfTime(kept, this.state) ? this.#fit("time") : false;
  }

  /** The numbers or the day changed: the rest is planned anew with them. */
  async renew(made_for) {
    if (!this.kept || this.#fitting || this.kept.made_for === made_for) return false;
    this.#keep({ ...this.kept, made_for });
    return this.#fit("time");
  }

  /** Move the heat and everything with it: later by some minutes, or called to start in some. */
  async moveHeat(heat, isCalled) {
    this.#session.change({ heat });
    if (this.kept) await this.#fit(isCalled ? "called" : "moved");
  }

  async #fit(reason) {
    this.#fitting = true;
    const before = this.kept;
    const plan = this.heat_ms === null ? replanned : reason === "called" ? called : fitted;
    const after = await plan(before, this.now_ms, this.heat_ms, this.#make).finally(() => { this.#fitting = false; });
    if (!after) return false;
    const taps = this.kept.events.slice(before.events.length);   // what was tapped while the engine thought
    const isNews = reason !== "time" || inOrder(after.steps).length !== inOrder(before.steps).length;
    const told = isNews && this.heat_ms !== null ? toldOf(reason, before, after, this.now_ms) : before.told;
    this.#keep({ ...after, told, events: [...after.events, ...taps] });
    return true;
  }

  #noteClock() {
    const gap_s = this.#clock.takeGap_ms() / 1000;
    const { kept } = this;
    if (gap_s > 0) this.#keep({ ...kept, told: { kind: "gap", n: 0, gap_s, at_ms: this.now_ms } });
    else if (kept.ahead_ms !== this.#clock.ahead_ms) this.#keep({ ...kept, ahead_ms: this.#clock.ahead_ms });
  }

  #keep(run) { this.#session.change({ warmUp: run }); }
}
