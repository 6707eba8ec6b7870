/** What a break-up of one's own brings, in words: the finish, its difference to the plan, and where it fails. */
import { el } from "../lib/dom.js";
import { clock, number, percent, span } from "../lib/format.js";
import { against, isBetter } from "../lib/mine.js";
import { whereItFails } from "../lib/score-words.js";
import { _, amount, groupName, loadName, movementName } from "../lib/words.js";
import { difference } from "./difference.js";

/** "You would fail rep 31 of Ring dip, about 4:10."; of a distance, calories or seconds how much is done before. */
export function failSentence(plan) {
  const { movement, rep, done, unit, round, at_s } = whereItFails(plan);
  const params = { movement: movementName(movement), rep: number(rep), done: amount(Math.floor(done), unit), round: number(round), time: clock(at_s) };
  return (unit === "reps" ? FAILED_REP : FAILED_AFTER)[plan.intervals ? "interval" : round > 1 ? "round" : "once"](params);
}

const FAILED_REP = {
  interval: (params) => _("You would fail rep {rep} of {movement} in interval {round}, about {time}.", params),
  round: (params) => _("You would fail rep {rep} of {movement} in round {round}, about {time}.", params),
  once: (params) => _("You would fail rep {rep} of {movement}, about {time}.", params),
};
const FAILED_AFTER = {
  interval: (params) => _("You would fail after {done} of {movement} in interval {round}, about {time}.", params),
  round: (params) => _("You would fail after {done} of {movement} in round {round}, about {time}.", params),
  once: (params) => _("You would fail after {done} of {movement}, about {time}.", params),
};

function ofIntervals({ intervals, breaks }) {
  return breaks === null ? _("{n} of {n}", { n: number(intervals.length) }) : number(breaks);
}

/** The one number: a time, a count, rounds, the interval that breaks, a load; where it fails, the repetition. */
export function bigNumber(verdict) {
  if (verdict.attempts) return verdict.likely > 0 ? loadName(verdict.likely) : _("no lift");
  if (verdict.fails) return verdict.fails.unit === "reps" ? _("Rep {rep}", { rep: number(verdict.fails.rep) }) : amount(Math.floor(verdict.fails.done), verdict.fails.unit);
  if (verdict.intervals) return ofIntervals(verdict);
  if (verdict.rounds !== null) return verdict.extra > 0 ? `${number(verdict.rounds)} + ${number(verdict.extra)}` : number(verdict.rounds);
  return verdict.finishes ? clock(verdict.time_s) : number(verdict.count);
}

function label(verdict) {
  if (verdict.attempts) return _("Likely heaviest lift");
  if (verdict.fails) return _("It fails here");
  if (verdict.intervals) return verdict.breaks === null ? _("It fits") : _("It breaks in interval");
  if (verdict.rounds !== null) return _("Rounds by the end");
  return verdict.finishes ? _("Finishing time") : _("Count at the cap");
}

/** "Tightest: interval 9, 6 s to spare." */
function marginSentence({ intervals, breaks }) {
  if (intervals.length === 0) return "";
  const least = intervals.reduce((low, one) => (one.margin_s < low.margin_s ? one : low));
  const params = { interval: number(least.interval), time: span(Math.abs(least.margin_s)) };
  return breaks === null ? _("Tightest is interval {interval}: {time} to spare.", params) : _("Interval {interval} takes {time} too long.", params);
}

/** How each attempt goes: "95 kg 84%, 100 kg 50%", and what does not fit the time or comes too soon. */
function chanceSentence({ attempts }) {
  const each = attempts.map(({ load_kg, chance_fraction, fits }) => `${loadName(load_kg)} ${fits === false ? _("too late") : percent(chance_fraction)}`);
  const said = _("How often each goes: {list}.", { list: each.join(", ") });
  const hurried = attempts.some(({ rested, fits }) => fits && rested === false);
  const soon = _("Less than a minute of rest before a heavy attempt: nobody can promise you that one.");
  return hurried ? `${said} ${soon}` : said;
}

/** Beside the difference to the plan: strength left, the margin or the chances. */
function besides(verdict, low) {
  if (verdict.attempts) return chanceSentence(verdict);
  const left = _("Lowest strength left ({group}): {left}.", { group: groupName(low.group), left: percent(low.reserve) });
  return verdict.intervals ? `${marginSentence(verdict)} ${left}` : left;
}

/** What is better than the plan is so only for exact numbers: without this word the plan would seem the poorer one. */
const counting = ({ verdict, before }) => (isBetter(against(verdict, before))
  ? _("That counts on your numbers being exact; the plan keeps a margin for a day when they are not.") : "");

const told = ({ mine }) => `${difference(mine.verdict, mine.before)} ${counting(mine)}`.trim();

const answer = (plan, low) => (plan.mine.verdict.fails ? failSentence(plan) : `${told(plan)} ${besides(plan.mine.verdict, low)}`.trim());

/** The panel of the own screen: `plan` with the own break-up in it, see `mine.js`; `low`: the lowest moment of what limits. */
export function verdictPanel(plan, low) {
  const { verdict } = plan.mine;
  return [
    el("p", { class: "eyebrow" }, label(verdict)),
    el("p", { class: "numeral verdict__number" }, bigNumber(verdict)),
    el("p", { class: "verdict__says" }, answer(plan, low)),
  ];
}

/** On the break-up: that this is the athlete's own, and what it brings. */
export const mineTag = () => el("p", {}, el("span", { class: "tag tag--mine", "data-mine": "" }, _("Your own break-up")));

export const mineSays = (plan) => el("p", { class: "lead" }, plan.mine.verdict.fails ? failSentence(plan) : told(plan));
