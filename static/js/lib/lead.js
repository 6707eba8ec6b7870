/** Of several open pages one leads: it alone sounds, speaks and vibrates. The last one opened or touched leads; when it goes, another takes over. */

const LOCK = "heatside/sound";

export class Lead {
  #tell;
  #letGo = null;
  #wait = null;

  /** `tell()` is called when this page begins or ceases to lead without having asked. */
  constructor(tell) { this.#tell = tell; }

  leads = false;

  /** From now on this page leads. Until the browser says otherwise it is taken at its word, so that no cue waits for an answer. */
  take() {
    if (this.leads) return;
    this.#wait?.abort();
    this.leads = true;
    this.#hold({ steal: true });
  }

  leave() {
    this.leads = false;
    this.#wait?.abort();
    this.#letGo?.();
    this.#letGo = null;
    this.#wait = null;
  }

  /** Hold the lock until it is let go of or another page takes it; then wait in line. */
  async #hold(how) {
    if (!("locks" in navigator)) return;
    const wait = new AbortController();
    this.#wait = wait;
    try {
      await navigator.locks.request(LOCK, how.steal ? how : { signal: wait.signal }, () => this.#held(wait));
    } catch {
      if (wait.signal.aborted || this.#wait !== wait) return;   // we left, or asked anew
      this.leads = false;
      this.#letGo = null;
      this.#hold({});
      this.#tell();
    }
  }

  #held(wait) {
    if (wait.signal.aborted) return null;
    const wasLeading = this.leads;
    this.leads = true;
    if (!wasLeading) this.#tell();
    return new Promise((done) => { this.#letGo = done; });
  }
}
