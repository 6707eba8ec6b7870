/** The warm-up: steps counted back from the heat, ticked off, with a plain countdown, a beep and the screen kept on. */
import { el, find, refill, write } from "../lib/dom.js";
import { beep, wakeSound } from "../lib/beeps.js";
import { clock, timeOfDay } from "../lib/format.js";
import { allot, countsBackFrom, place, startNow, untilNextSecond_ms } from "../lib/warmup-clock.js";
import { _, ngettext } from "../lib/words.js";
import { heatLine } from "./heat.js";
import { planWarnings, whyList } from "./plan-notes.js";
import { stepLine, stepList } from "./warm-up-steps.js";

const digits = (left_s) => el("p", { class: "numeral numeral--huge", role: "timer" }, clock(Math.ceil(left_s)));

export class WarmUp {
  #session;
  #steps = [];
  #timer = null;
  #last = -1;
  #sound = false;

  constructor(root, session) {
    this.root = root;
    this.#session = session;
    this.now = find("warm-up-now", root);
    find("warm-up-start", root).addEventListener("click", () => this.#start());
    const sound = find("warm-up-sound", root);
    sound.addEventListener("click", () => {
      this.#sound = !this.#sound;
      sound.setAttribute("aria-pressed", String(this.#sound));
      if (this.#sound) { wakeSound(); setTimeout(beep, 60); }
    });
    document.addEventListener("visibilitychange", () => { if (!document.hidden) this.#tick(); });
  }

  show(warmUp) {
    this.#steps = warmUp.steps.filter((step) => !step.optional);  // extras take no time of the sequence
    this.#last = -1;
    const { ticks } = this.#session.state;
    const onTick = (key, done) => this.#session.change({ ticks: { ...this.#session.state.ticks, [key]: done } });
    const list = stepList(warmUp.steps, { ticks, onTick, units: this.#session.athlete.units });
    refill(find("warm-up-steps", this.root), list);
    refill(find("warm-up-checks", this.root), planWarnings(warmUp), whyList(_("Why this warm-up"), warmUp.reasons));
    this.#tick();
  }

  /** Run the countdown only while its screen is open; the first opening for a heat fixes the time there is for it. */
  open(isOpen) {
    this.isOpen = isOpen;
    const { warmUp } = this.#session.state;
    const heat_ms = this.#heat_ms;
    if (isOpen && heat_ms !== null && warmUp?.for_ms !== heat_ms) this.#session.change({ warmUp: allot(heat_ms, Date.now()) });
    this.#tick();
  }

  #start() {
    const running = this.#session.state.warmUp?.anchor_ms;
    const now_ms = Date.now();
    this.#session.change({ warmUp: running ? allot(this.#heat_ms, now_ms) : startNow(this.#heat_ms, now_ms, this.#steps[0]?.at_s ?? 0) });
    this.#tick();
  }

  get #heat_ms() { return this.#session.state.heat?.at_ms ?? null; }

  #tick() {
    clearTimeout(this.#timer);
    if (!this.isOpen || document.hidden) return;
    const at = place(this.#steps, countsBackFrom(this.#session.state.warmUp, this.#heat_ms, Date.now()), Date.now());
    this.#draw(at);
    if (at.index !== this.#last) this.#entered(at);
    this.#timer = setTimeout(() => this.#tick(), at.left_s === null ? 5000 : untilNextSecond_ms(Math.abs(at.left_s)));
  }

  /** A new step: told once, beeped once; steps slept through are not beeped after. */
  #entered(at) {
    const step = this.#steps[at.index];
    if (this.#last >= 0 && at.index === this.#last + 1 && this.#sound) beep();
    this.#last = at.index;
    if (step) find("warm-up-says", this.root).textContent = stepLine(step, this.#session.athlete.units);
    this.root.querySelectorAll('[data-step=""]').forEach((node, index) => {
      if (index === at.index) node.setAttribute("aria-current", "step");
      else node.removeAttribute("aria-current");
    });
  }

  #draw(at) {
    write(find("warm-up-heat", this.root), heatLine(this.#session.state.heat));
    find("warm-up-start", this.root).textContent = this.#session.state.warmUp?.anchor_ms ? _("Stop the countdown") : _("Start now");
    const parts = { unset: () => this.#unset(), before: () => this.#before(at), running: () => this.#running(at), over: () => this.#over(at) };
    this.now.dataset.phase = at.phase;
    this.now.replaceChildren(...parts[at.phase]());
  }

  #unset() {
    const minutes = Math.round((this.#steps[0]?.at_s ?? 0) / 60);
    return [el("p", { class: "lead" }, ngettext("Takes {n} minute, the rest before the start included. Start it when you are ready.", "Takes {n} minutes, the rest before the start included. Start it when you are ready.", minutes))];
  }

  #before(at) {
    const starts = new Date(Date.now() + at.left_s * 1000);
    return [el("p", { class: "eyebrow" }, _("Starts at {time}, in", { time: timeOfDay(starts) })), digits(at.left_s)];
  }

  #running(at) {
    const step = this.#steps[at.index];
    return [el("p", { class: "lead now__step" }, stepLine(step, this.#session.athlete.units)), digits(at.left_s)];
  }

  #over(at) {
    return at.left_s > 0
      ? [el("p", { class: "lead" }, _("Warm. Keep it so: walk, breathe, stay covered.")), el("p", { class: "eyebrow" }, _("To the start")), digits(at.left_s)]
      : [el("p", { class: "lead" }, _("The heat is on. Your floor card is one tap away."))];
  }
}
