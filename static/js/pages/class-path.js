/** The athlete's path, bound together once the first screen stands. Components know nothing of one another; this module does. */
import { find } from "../lib/dom.js";
import { OVERTAKEN, ask } from "../lib/engine.js";
import { gatherNumbers } from "../lib/numbers.js";
import { dayNumbers, daySettings, largestSets } from "../lib/player-today.js";
import { shortScore } from "../lib/score-words.js";
import { keepScreenOn, letScreenSleep } from "../lib/wakelock.js";
import { useUnits, _ } from "../lib/words.js";
import { Card } from "../ui/card.js";
import { goOffline } from "../ui/going-offline.js";
import { HeatScreen } from "../ui/heat.js";
import { adviseHomeScreen } from "../ui/home-screen.js";
import { showNumbers, tellWhatLacks } from "../ui/numbers.js";
import { OwnScreen } from "../ui/own.js";
import { PlanView } from "../ui/plan-view.js";
import { hintAtScreen } from "../ui/screen-hint.js";
import { WarmUp } from "../ui/warm-up.js";
import { todayOf } from "../ui/warm-up-today.js";
import { code, notices, page, screen, session, workout } from "./class-context.js";

const WHO = ["option", "division", "level", "units"];           // change which questions there are, or how they look
const PLAN = [...WHO, "answers", "style"];                      // change the plan
const NUMBERS = [...WHO, "answers", "heat"];                   // change which questions are asked next
const WARM_UP = [...PLAN, "own", "heat", "today"];

const READ_FROM_AFAR = ["warm-up", "card"];                     // the screen stays on, and nothing may reload under it
let questions = [];

const numbers = () => gatherNumbers(session.athlete, session.state.answers);

/** What is asked depends on what was answered: a repeat test only from a certain number on. */
async function renewQuestions(redraw) {
  const before = JSON.stringify(questions);
  const answer = await ask("questions", "questions", workout, session.settings(), numbers());
  if (answer === OVERTAKEN || answer.error) return;
  questions = answer;
  if (redraw || JSON.stringify(questions) !== before) showNumbers(screen("numbers"), session, questions);
  else tellWhatLacks(screen("numbers"), session, questions);
}

async function renewPlan() {
  if (await parts.plan.renew(numbers())) {
    parts.card.show(parts.plan.shown);
    session.change({ summary: shortScore(parts.plan.shown) });
  } else if (!parts.plan.plan) parts.card.show(null);
  if (session.state.screen === "own") parts.own.open();
}

let nowKnown = null;
const numbersKnown = new Promise((resolve) => { nowKnown = resolve; });

/** What the warm-up is made from; `make` asks the engine, with some settings changed, and gives null when a later question overtook this one. */
const warmUpDoor = {
  inputs() {
    const today = todayOf(session);
    return [dayNumbers(numbers(), today), { ...session.settings(), ...daySettings(today, workout.gym), largest_sets: largestSets(parts.plan.shown) }];
  },
  async make(patch) {
    await numbersKnown;   // a run kept from before may ask earlier
    const [known, settings] = this.inputs();
    const answer = await ask("warm-up", "warm_up", workout, known, { ...settings, ...patch });
    return answer === OVERTAKEN ? null : answer;
  },
};

function answerChanges() {
  session.listen(async (names) => {
    const any = (list) => list.some((name) => names.has(name));
    if (names.has("units")) useUnits(session.athlete.units);
    if (any(NUMBERS)) await renewQuestions(any([...WHO, "heat"]));
    if (any([...PLAN, "own"])) await renewPlan();
    else if (names.has("heat")) await parts.plan.renewAdvice();
    if (names.has("holds")) parts.card.show(parts.plan.shown);
    if (any(WARM_UP)) await parts.warmUp.renew();
  });
}

/** A newer revision was opened since the athlete was last here: say so once. */
function sayIfChanged() {
  const seen = session.state.revision;
  if (seen !== null && workout.revision > seen) notices.show("changed", _("The coach changed this workout since you were last here. Your numbers are kept and your plan is made anew."));
  session.change({ revision: workout.revision });
}

/** A screen was opened. */
export function opened(name) {
  parts.warmUp.open(name === "warm-up");
  if (READ_FROM_AFAR.includes(name)) keepScreenOn();
  else letScreenSleep();
  if (name === "heat") parts.heat.show();
  if (name === "card") parts.card.fit();
  if (name === "own") parts.own.open();
}

const plan = new PlanView(screen("plan"), session);
const parts = {
  plan, own: new OwnScreen(screen("own"), session, plan), heat: new HeatScreen(screen("heat"), session),
  card: new Card(screen("card"), session), warmUp: new WarmUp(screen("warm-up"), session, warmUpDoor),
};

/** Fill every screen: questions, plan, warm-up; then keep the page for a day without a connection. */
export async function fillPath() {
  hintAtScreen();
  opened(session.state.screen);
  sayIfChanged();
  await renewQuestions(true);
  await renewPlan();
  nowKnown();
  answerChanges();
  page.dataset.ready = "";
  await parts.warmUp.renew();
  adviseHomeScreen(notices, session);
  await goOffline({
    code, revision: workout.revision, title: workout.title, languages: page.dataset.languages.split(" "),
    notices, saved: find("saved"), busy: () => READ_FROM_AFAR.includes(document.body.dataset.at),
  });
}
