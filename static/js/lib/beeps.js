/** Tones from WebAudio, scheduled ahead on the audio clock so that a busy page does not make them late.
    A phone only lets sound out after a touch, so `wake` is called from one; calls and locked screens may stop it at any time. */

const AHEAD_MS = 8000;     // tones further off are not scheduled yet
const STUCK_MS = 200;      // an audio clock that stands still this long is dead, whatever it says of itself
const TONES = {            // [pitch Hz, start s, length s]; 800 to 1600 Hz carries in a hall and is heard at any age
  count: [[1000, 0, 0.12]],
  go: [[1500, 0, 0.5]],
  switch: [[1200, 0, 0.12], [1200, 0.2, 0.12]],
  ease: [[800, 0, 0.35]],
};

function tone(audio, at_s, [pitch_hz, after_s, length_s]) {
  const voice = audio.createOscillator();
  const volume = audio.createGain();
  const from_s = at_s + after_s;
  voice.type = "square";   // its overtones get through music where a pure tone does not
  voice.frequency.value = pitch_hz;
  volume.gain.setValueAtTime(0.4, from_s);
  volume.gain.exponentialRampToValueAtTime(0.001, from_s + length_s);
  voice.connect(volume).connect(audio.destination);
  voice.start(from_s);
  voice.stop(from_s + length_s);
  return voice;
}

export class Beeps {
  #audio = null;
  #due = new Map();

  constructor() {
    document.addEventListener("visibilitychange", () => { if (!document.hidden && this.#audio) this.wake(); });
  }

  get works() { return this.#audio?.state === "running"; }

  /** Let sound out, or out again: call it from a touch, and when the page comes back. */
  async wake() {
    if (!("AudioContext" in globalThis)) return;
    if ("audioSession" in navigator) navigator.audioSession.type = "transient";  // lowers the person's music, does not stop it
    this.#audio ??= this.#open();
    const { state, currentTime } = this.#audio;
    if (state !== "running") await Promise.race([this.#audio.resume().catch(() => {}), new Promise((done) => { setTimeout(done, STUCK_MS); })]);
    else await new Promise((done) => { setTimeout(done, STUCK_MS); });
    if (this.#audio.state !== "running" || this.#audio.currentTime === currentTime) this.#renew();
  }

  #open() {
    const audio = new AudioContext();
    audio.addEventListener?.("statechange", () => { if (audio.state !== "running") this.#forget(); });
    return audio;
  }

  #renew() {
    this.#forget();
    this.#audio.close().catch(() => {});
    this.#audio = this.#open();
    this.#audio.resume().catch(() => {});
  }

  /** Tones scheduled on a clock that stopped would sound late: better never. */
  #forget() {
    for (const { voices } of this.#due.values()) voices.forEach((voice) => voice.stop(0));
    this.#due.clear();
  }

  /** Exactly these cues are to sound, [{at_ms, kind}]: what was scheduled and is not among them falls silent, what is past is passed over. */
  plan(cues, now_ms) {
    const near = cues.filter((cue) => cue.at_ms >= now_ms && cue.at_ms - now_ms <= AHEAD_MS);
    const wanted = new Map(near.map((cue) => [`${cue.kind}/${Math.round(cue.at_ms)}`, cue]));
    for (const [key, { at_ms, voices }] of this.#due) {
      if (wanted.has(key)) continue;
      if (at_ms > now_ms) voices.forEach((voice) => voice.stop(0));   // one that is sounding may end
      this.#due.delete(key);
    }
    if (this.works) for (const [key, cue] of wanted) if (!this.#due.has(key)) this.#due.set(key, this.#schedule(cue, now_ms));
  }

  #schedule({ at_ms, kind }, now_ms) {
    const at_s = this.#audio.currentTime + (at_ms - now_ms) / 1000;
    return { at_ms, voices: TONES[kind].map((one) => tone(this.#audio, at_s, one)) };
  }
}
