/** Tells milestones, and only those: to a screen reader, by the phone's voice, by vibration. */
import { buzz, hush, speak } from "../lib/player-signals.js";
import { _ } from "../lib/words.js";
import { stepLine } from "./warm-up-steps.js";

export class Teller {
  #says;
  #step = null;
  #news_ms = null;

  constructor(says) { this.#says = says; }

  /** Begin afresh: the step on the screen will be told, but not felt. */
  reset() { this.#step = null; }

  quiet() { hush(); }

  /** A step is told once when it is entered; steps slept through are not told after. True if it is a new one. */
  step(state, view, signals) {
    if (state.index === this.#step) return false;
    const isFirst = this.#step === null;
    this.#step = state.index;
    const text = state.step ? stepLine(state.step, view) : _("You are warm");
    const next = state.next ? ` ${_("Next: {step}", { step: stepLine(state.next, view) })}` : "";
    this.#says.textContent = `${text}.${next}`;
    if (signals.voice) speak(text);
    if (signals.buzz && !isFirst) buzz();
    return true;
  }

  /** What was planned anew, once; `at_ms` tells one piece of news from another. */
  news(line, at_ms) {
    if (!at_ms || !line || this.#news_ms === at_ms) return;
    this.#news_ms = at_ms;
    this.#says.textContent = line;
  }
}
