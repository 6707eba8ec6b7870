/** The gym's screen: the warm-up of a regular athlete, played for the whole class; each phone keeps its own loads and heights. */
import { find } from "../lib/dom.js";
import { OVERTAKEN, ask } from "../lib/engine.js";
import { heatFromMinutes, minutesLeft } from "../lib/heat.js";
import { NOTHING_SAID, daySettings } from "../lib/player-today.js";
import { Session } from "../lib/session.js";
import { keepScreenOn } from "../lib/wakelock.js";
import { _, loadWords, useUnits } from "../lib/words.js";
import { hintAtScreen } from "../ui/screen-hint.js";
import { Stepper } from "../ui/stepper.js";
import { WarmUp } from "../ui/warm-up.js";

const page = find("class-warm-up");
const { code } = page.dataset;
const workout = JSON.parse(document.getElementById("workout").textContent);
const session = new Session(workout, `${code}/everybody`, () => {});   // a full store only means that a reload begins anew
const EVERYBODY = { level: "regular" };

const door = {
  inputs: () => [EVERYBODY, { ...session.settings(), ...daySettings(NOTHING_SAID, workout.gym) }],
  async make(patch) {
    const [numbers, settings] = this.inputs();
    const answer = await ask("warm-up", "warm_up", workout, numbers, { ...settings, ...patch });
    return answer === OVERTAKEN ? null : answer;
  },
};

function askHeat() {
  const left_min = minutesLeft(session.state.heat, Date.now());
  const stepper = new Stepper({
    label: _("Minutes until the heat starts"), unit: _("min"), value: left_min > 0 ? left_min : null,
    question: { low: 1, high: 360, step: 1, default: null },
    onChange: (n) => session.change({ heat: n === null ? { kind: "none" } : heatFromMinutes(n, Date.now()) }),
  });
  find("everybody-heat").append(stepper.node);
}

/** A hall's screen is shown whole; where the browser will not, nothing is lost. */
function fillScreen() {
  document.documentElement.requestFullscreen?.().catch(() => {});
}

document.body.dataset.at = "warm-up";
await Promise.all([loadWords(document.documentElement.lang, code, workout.movements).catch(() => {}), session.open()]);
useUnits(session.athlete.units);
const warmUp = new WarmUp(page, session, door, { common: true });
askHeat();
session.listen((names) => { if (names.has("heat")) warmUp.renew(); });
find("warm-up-start").addEventListener("click", fillScreen);
hintAtScreen();
warmUp.open(true);
keepScreenOn();
page.dataset.ready = "";
