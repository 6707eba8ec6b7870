/** What this athlete has told us about this workout, kept on the phone and nowhere else. */
import { unitsFor } from "./format.js";
import { SameClass } from "./same-class.js";
import { get, set } from "./store.js";
import { toIso } from "./heat.js";
import { loadStep } from "./own-attempts.js";
import { optionsOf } from "./parts.js";

const FRESH = { screen: "briefing", heat: null, answers: {}, option: null, division: null, style: "even", warmUp: null, today: null, holds: {}, own: null, draft: null, summary: null, revision: null };
const NOBODY = { level: "regular", answers: {}, units: unitsFor(navigator.language) };

export class Session {
  #listeners = [];
  #onTrouble;
  #others;
  #otherPeople;

  constructor(workout, code, onTrouble) {
    this.workout = workout;
    this.code = code;
    this.#onTrouble = onTrouble;
    this.state = { ...FRESH, option: this.options[0].key, division: workout.divisions[0]?.key ?? null };
    this.athlete = NOBODY;
    this.#others = new SameClass(`class/${code}`, (patch) => { Object.assign(this.state, patch); this.#tell(Object.keys(patch)); });
    this.#otherPeople = new SameClass("athlete", (patch) => { this.athlete = { ...this.athlete, ...patch }; this.#tell(Object.keys(patch)); });
  }

  async open() {
    try {
      const [state, athlete] = await Promise.all([get(`class/${this.code}`), get("athlete")]);
      this.state = this.#fitting({ ...this.state, ...state });
      this.athlete = { ...NOBODY, ...athlete };
    } catch (error) {
      this.#onTrouble(error);
    }
  }

  /** An option or division may be gone in a newer revision of the workout. */
  #fitting(state) {
    const has = (list, key) => list.some((one) => one.key === key);
    const { options, workout: { divisions } } = this;
    return {
      ...state,
      option: has(options, state.option) ? state.option : options[0].key,
      division: has(divisions, state.division) ? state.division : divisions[0]?.key ?? null,
    };
  }

  /** Change something about this workout: saved at once, and everybody who listens hears which names changed. */
  change(patch) {
    Object.assign(this.state, patch);
    this.#keep(`class/${this.code}`, this.state);
    this.#others.tell(patch);
    this.#tell(Object.keys(patch));
  }

  /** Change something about the person, shared between workouts. */
  changeAthlete(patch) {
    this.athlete = { ...this.athlete, ...patch };
    this.#keep("athlete", this.athlete);
    this.#otherPeople.tell(patch);
    this.#tell(Object.keys(patch));
  }

  get options() { return optionsOf(this.workout); }

  listen(listener) { this.#listeners.push(listener); }

  settings(patch = {}) {
    const { option, division, style, heat } = this.state;
    return { option, division, style, form: 1.0, seed: 1, heat_start: heat?.at_ms ? toIso(heat.at_ms) : null, warm_up_min: null, just_for_me: heat?.kind === "none", bar_step_kg: loadStep(this.athlete.units), ...patch };
  }

  #tell(names) { for (const listener of this.#listeners) listener(new Set(names)); }

  #keep(key, value) { set(key, structuredClone(value)).catch(this.#onTrouble); }
}
