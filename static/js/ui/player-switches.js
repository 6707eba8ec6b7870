/** Sound, voice and vibration on and off, remembered for this person. */
import { el, find, findAll, refill } from "../lib/dom.js";
import { canBuzz, canSpeak, speak } from "../lib/player-signals.js";
import { _ } from "../lib/words.js";

const USUAL = { sound: true, voice: false, buzz: true };

export const signalsOf = (session) => ({ ...USUAL, ...session.athlete.cues });

export class Switches {
  /** `wake` lets sound out; it is called from the touch that turns it on. */
  constructor(root, session, wake) {
    this.root = root;
    this.session = session;
    this.wake = wake;
    find("player-mute", root).addEventListener("click", () => this.#turn("sound"));
    this.draw();
  }

  #turn(name) {
    const isOn = !signalsOf(this.session)[name];
    this.session.changeAthlete({ cues: { ...signalsOf(this.session), [name]: isOn } });
    if (name === "voice" && isOn) speak(_("The voice is on."));
    if (name === "sound" && isOn) this.wake();
    this.draw();
  }

  draw() {
    const names = { sound: _("Sound"), ...(canSpeak() && { voice: _("Voice") }), ...(canBuzz() && { buzz: _("Vibration") }) };
    const signals = signalsOf(this.session);
    const button = ([name, text]) => el("button", { type: "button", class: "button button--small", "data-signal": name, "aria-pressed": String(signals[name]), onclick: () => this.#turn(name) }, text);
    for (const place of findAll("player-signals", this.root)) refill(place, Object.entries(names).map(button));
    find("player-mute", this.root).setAttribute("aria-pressed", String(!signals.sound));
  }
}
