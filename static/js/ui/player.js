/** Plays a warm-up under way: the screen, the taps, the sounds, and looking every second whether it still fits. */
import { Beeps } from "../lib/beeps.js";
import { find } from "../lib/dom.js";
import { Lead } from "../lib/lead.js";
import { cuesOf, untilChange_ms } from "../lib/player-cues.js";
import { _ } from "../lib/words.js";
import { Teller } from "./player-teller.js";
import { PlayerView } from "./player-view.js";
import { retimeLine } from "./player-words.js";

const SAME_TAP_MS = 600;   // a wet finger taps twice
const IDLE_MS = 1000;
const MORE_S = 30;
const SILENT = { sound: false, voice: false, buzz: false };
const KEYS = { " ": "tick", Enter: "tick", ArrowRight: "tick", ArrowLeft: "back", "+": "more", s: "skip" };

export class Player {
  #timer = null;
  #lastTap_ms = -Infinity;
  #beeps = new Beeps();
  #lead = new Lead(() => this.#tick());

  /** `hooks`: {view(), signals(), extrasOf(index), onChange(state), onClose(), card}; `card`: the address of what comes after, or null. */
  constructor(root, run, hooks) {
    this.root = find("player", root);
    this.teller = new Teller(find("player-says", root));
    this.run = run;
    this.hooks = hooks;
    this.picture = new PlayerView(this.root);
    this.#bind();
    document.addEventListener("visibilitychange", () => this.#back());
    addEventListener("pageshow", () => this.#back());
  }

  get isOpen() { return !this.root.hidden; }

  #bind() {
    const on = (hook, act) => find(hook, this.root).addEventListener("click", act);
    on("player-done", () => this.#done());
    on("player-back", () => this.tap("back"));
    on("player-skip", () => this.tap("skip"));
    on("player-more-time", () => this.tap("more", { seconds: MORE_S }));
    on("player-hand", () => this.tap(this.run.state.auto ? "hand" : "auto"));
    on("player-list", () => this.close());
    on("player-open-more", (event) => this.#unfold(event.currentTarget));
    this.root.addEventListener("click", (event) => { if (!event.target.closest("button, a, input, label, summary, [data-player-more]")) this.tap("tick"); });
    this.root.addEventListener("keydown", (event) => this.#key(event));
    document.addEventListener("pointerdown", () => this.#touched());
  }

  /** Seen again: it leads once more. */
  #back() {
    if (this.isOpen && !document.hidden) this.#lead.take();
    this.#tick();
  }

  /** Ticks the step; when all are done, it leads on to the card. */
  #done() {
    if (this.run.state?.phase === "over" && this.hooks.card) location.hash = this.hooks.card;
    else this.tap("tick");
  }

  /** The page that is touched leads, and a touch is what lets sound out. */
  #touched() {
    if (!this.isOpen) return;
    this.#lead.take();
    if (this.hooks.signals().sound && !this.#beeps.works) this.wake();
  }

  #unfold(button) {
    const more = find("player-more", this.root);
    more.hidden = !more.hidden;
    button.setAttribute("aria-expanded", String(!more.hidden));
  }

  #key(event) {
    const kind = KEYS[event.key];
    if (!kind || event.repeat || event.altKey || event.ctrlKey || event.metaKey) return;
    if ((event.key === " " || event.key === "Enter") && event.target !== this.root) return;  // a control does its own work
    event.preventDefault();
    this.tap(kind, kind === "more" ? { seconds: MORE_S } : {});
  }

  /** Let sound out: call it from a touch. */
  wake() { return this.#beeps.wake().then(() => this.#tick()); }

  open() {
    this.root.hidden = false;
    document.body.toggleAttribute("data-playing", true);
    this.root.focus({ preventScroll: true });
    this.teller.reset();
    this.#lead.take();
    this.#tick();
  }

  close() {
    this.leave();
    this.hooks.onClose();
  }

  /** Another screen is shown; the run itself goes on. */
  leave() {
    this.root.hidden = true;
    document.body.toggleAttribute("data-playing", false);
    this.#stop();
  }

  #stop() {
    clearTimeout(this.#timer);
    this.#beeps.plan([], 0);
    this.#lead.leave();
    this.teller.quiet();
  }

  tap(kind, extra) {
    const now_ms = this.run.now_ms;
    const isStep = kind === "tick" || kind === "skip";
    if (!this.run.kept || (isStep && (now_ms - this.#lastTap_ms < SAME_TAP_MS || this.run.state.phase !== "running"))) return;
    if (isStep) this.#lastTap_ms = now_ms;
    this.#lead.take();
    this.run.tap(kind, extra);
    this.#tick();
  }

  #tick() {
    clearTimeout(this.#timer);
    if (!this.isOpen) return;
    if (document.hidden || !this.run.kept) { this.#stop(); return; }
    find("player-silent", this.root).hidden = this.#lead.leads;
    if (this.#lead.leads) this.run.keepUp().then((isNew) => { if (isNew && this.isOpen) this.#tick(); });
    const { state } = this.run;
    this.#draw(state);
    this.#sound(state);
    if (this.teller.step(state, this.hooks.view(), this.#signals)) this.hooks.onChange(state);
    this.#timer = setTimeout(() => this.#tick(), state.phase === "running" ? untilChange_ms(state) : IDLE_MS);
  }

  #draw(state) {
    const { heat_ms, now_ms, kept } = this.run;
    const toHeat_s = heat_ms === null ? null : (heat_ms - now_ms) / 1000;
    this.picture.draw(state, { view: this.hooks.view(), extras: this.hooks.extrasOf(state.index), toHeat_s, run: kept, now_ms });
    this.#press("hand", !state.auto);
    this.teller.news(retimeLine(state, kept, now_ms), kept.told?.at_ms);
    const isOver = state.phase === "over";
    for (const hook of ["skip", "more-time"]) find(`player-${hook}`, this.root).disabled = isOver;
    const done = find("player-done", this.root);
    done.disabled = isOver && !this.hooks.card;
    done.textContent = isOver && this.hooks.card ? _("Floor card") : _("Done");
  }

  get #signals() { return this.#lead.leads ? this.hooks.signals() : SILENT; }

  #press(hook, isOn) { find(`player-${hook}`, this.root).setAttribute("aria-pressed", String(isOn)); }

  #sound(state) {
    const { sound } = this.hooks.signals();
    const isHeard = sound && this.#lead.leads;
    this.#press("mute", !sound);
    this.#beeps.plan(isHeard && state.phase === "running" ? cuesOf(state, this.run.now_ms) : [], this.run.now_ms);
  }
}
