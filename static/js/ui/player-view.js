/** The step under way, as large as the screen: draws what it is given, and knows nothing of time or storage. */
import { find, write } from "../lib/dom.js";
import { clock, number } from "../lib/format.js";
import { stageOf } from "../lib/player-cues.js";
import { _ } from "../lib/words.js";
import { cueText, extraLine, placeText, stepLine, stepName, stepSize } from "./warm-up-steps.js";
import { retimeLine } from "./player-words.js";

const FULL_BAND_S = 300;   // before the heat the band shrinks over the last five minutes

const digits = (left_s) => (left_s < 0 ? `+${clock(Math.floor(-left_s))}` : clock(Math.ceil(left_s)));

export class PlayerView {
  constructor(root) {
    this.root = root;
    this.parts = Object.fromEntries(["place", "heat", "stage", "count", "step", "size", "cue", "digits", "band", "line", "next"].map((name) => [name, find(`player-${name}`, root)]));
  }

  /** `extras`: the optional steps that go with the step. `run.told`: what was last planned anew. */
  draw(state, { view, extras, toHeat_s, run, now_ms }) {
    write(this.parts.heat, toHeat_s === null ? "" : toHeat_s > 0 ? _("{time} to the heat", { time: clock(toHeat_s) }) : _("The heat is on"));
    write(this.parts.line, retimeLine(state, run, now_ms));
    if (state.phase === "running") this.#step(state, view, extras);
    else this.#over(toHeat_s);
  }

  #step(state, view, extras) {
    const { stage, side } = stageOf(state);
    const waits = stage === "next" && !state.auto && state.left_s <= 0;
    this.root.dataset.stage = stage;
    write(this.parts.place, placeText(state.step));
    write(this.parts.count, `${number(state.index + 1)}/${number(state.count)}`);
    write(this.parts.stage, this.#stageText(stage, side, waits));
    write(this.parts.step, stepName(state.step));
    write(this.parts.size, stepSize(state.step, view));
    write(this.parts.cue, [cueText(state.step), ...extras.map((step) => extraLine(step, view))].filter(Boolean).join(" "));
    write(this.parts.next, state.next ? _("Next: {step}", { step: stepLine(state.next, view) }) : _("Next: rest until the heat"));
    this.#digits(digits(state.left_s));
    this.#band(state.length_s > 0 ? Math.max(0, state.left_s) / state.length_s : 0);
  }

  #stageText(stage, side, waits) {
    if (waits) return _("Tap when you are done");
    if (stage === "next") return _("Get ready");
    if (stage === "rest") return _("Easy");
    if (side) return side === "first" ? _("Go: first side") : _("Go: other side");
    return _("Go");
  }

  #over(toHeat_s) {
    const isOn = toHeat_s !== null && toHeat_s <= 0;
    this.root.dataset.stage = isOn ? "next" : "rest";
    write(this.parts.stage, _("Warm-up done"));
    write(this.parts.step, isOn ? _("The heat is on") : _("You are warm"));
    write(this.parts.size, isOn ? _("Your floor card is one tap away.") : _("Walk, breathe, stay covered."));
    for (const name of ["place", "count", "cue", "next"]) write(this.parts[name], "");
    this.#digits(toHeat_s > 0 ? digits(toHeat_s) : "");
    this.#band(toHeat_s > 0 ? Math.min(1, toHeat_s / FULL_BAND_S) : 0);
  }

  /** As large as the room allows, however many there are. */
  #digits(text) {
    write(this.parts.digits, text);
    this.root.style.setProperty("--characters", String(Math.max(3, text.length)));
  }

  #band(share) { this.parts.band.style.setProperty("inline-size", `${(share * 100).toFixed(1)}%`); }
}
