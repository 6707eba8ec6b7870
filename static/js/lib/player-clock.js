/** A clock that neither stops while the phone sleeps nor runs backwards when somebody sets the phone's time.

    `Date` goes on during sleep but can be set; `performance.now()` cannot be set but stands still during sleep. So time is carried by the
    second and corrected by the first: forward whenever it is ahead, never backward. */

const UNNOTICED_MS = 250;  // less than this is the two clocks' own difference
const NOTICED_MS = 60_000;  // a gap worth telling the athlete about

export class SteadyClock {
  #date;
  #run;
  #base = null;
  #ahead_ms = 0;   // how far this clock is ahead of the phone's, after that was set back
  #gap_ms = 0;

  constructor(date = () => Date.now(), run = () => performance.now()) {
    this.#date = date;
    this.#run = run;
    this.#base = { date_ms: date(), run_ms: run() };
  }

  /** Milliseconds since 1970, as an athlete's run counts them. */
  now() {
    const date_ms = this.#date();
    const run_ms = this.#run();
    const slip_ms = date_ms - this.#base.date_ms - (run_ms - this.#base.run_ms);
    if (Math.abs(slip_ms) > UNNOTICED_MS) {
      if (slip_ms < 0) this.#ahead_ms -= slip_ms;
      if (slip_ms > NOTICED_MS) this.#gap_ms = slip_ms;
      this.#base = { date_ms, run_ms };
    }
    return this.#base.date_ms + this.#ahead_ms + (run_ms - this.#base.run_ms);
  }

  get ahead_ms() { return this.#ahead_ms; }

  /** Go on from a run kept by an earlier page: as far ahead as that was, and never before the last thing that happened. */
  resume(ahead_ms, last_ms) {
    const date_ms = this.#date();
    this.#ahead_ms = Math.max(ahead_ms, last_ms - date_ms, 0);
    this.#base = { date_ms, run_ms: this.#run() };
  }

  /** The time that passed unseen since this was last asked, 0 for none worth a word. */
  takeGap_ms() {
    const gap_ms = this.#gap_ms;
    this.#gap_ms = 0;
    return gap_ms;
  }
}
