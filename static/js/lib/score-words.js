/** A score in words, whatever the workout is scored by: a time, a count, rounds and more, a load, or several of them. */
import { clock, number } from "./format.js";
import { headline } from "./headline.js";
import { _, amount, loadName, movementName, ngettext, partSize } from "./words.js";

/** "8 rounds" or "8 rounds + 12". */
export function rounds(whole, extra) {
  const text = ngettext("{n} round", "{n} rounds", whole);
  return extra > 0 ? _("{rounds} + {extra}", { rounds: text, extra: number(extra) }) : text;
}

const liftOr = (kg) => (kg > 0 ? loadName(kg) : _("no lift"));

function failing({ movement, rep, done, unit }) {
  const params = { rep: number(rep), done: amount(Math.floor(done), unit), movement: movementName(movement) };
  return unit === "reps" ? _("fails at rep {rep}, {movement}", params) : _("fails after {done}, {movement}", params);
}

function lasting(plan) {
  if (plan.score.finishes) return ngettext("fits the {n} interval", "fits all {n} intervals", plan.intervals.length);
  const last = plan.intervals.at(-1);
  const params = { interval: number(plan.intervals.length) };
  return last?.margin_s < 0 ? _("breaks in interval {interval}", params) : _("as far as interval {interval}", params);
}

/** Where the cap or a gate comes first: "31 of 40 reps, Ring dip". */
function endedAt({ end }) {
  return _("{done} of {amount}, {movement}", { done: partSize(end.done, end.unit), amount: amount(end.amount, end.unit), movement: movementName(end.movement) });
}

/** The same without a movement: what counts in the whole workout, "131 of 180". */
const endedCount = ({ likely, count_in_all }) => _("{count} of {all}", { count: number(likely), all: number(count_in_all) });

function inShort(plan, ended) {
  const { kind, likely, likely_extra } = plan.score;
  if (plan.mine?.verdict.fails) return failing(whereItFails(plan));
  if (kind === "rounds") return rounds(likely, likely_extra);
  if (kind === "load") return liftOr(likely);
  if (plan.intervals) return lasting(plan);
  const told = headline(plan);
  return told.end ? ended(told) : clock(likely);
}

/** The movement and repetition at which an own break-up fails, how much of it is done then, and when. */
export function whereItFails({ blocks, mine: { verdict } }) {
  const { block, round, ...where } = verdict.fails;
  return { ...where, round, movement: blocks.find((one) => one.block === block && one.round === round)?.movement ?? blocks[0].movement };
}

/** How many of those who could be this athlete fail, with the plan or with one's own. */
export function whoFails({ people, fail }, own = false) {
  const params = { people: number(people) };
  if (own && fail === 0) return _("Of {people} people with numbers like yours, nobody would fail anywhere with your break-up.", params);
  if (own) return ngettext("Of {people} people with numbers like yours, {n} would fail somewhere with your break-up.", "Of {people} people with numbers like yours, {n} would fail somewhere with your break-up.", fail, params);
  if (fail === 0) return _("Of {people} people with numbers like yours, nobody would fail anywhere with the plan.", params);
  return ngettext("Of {people} people with numbers like yours, {n} would fail somewhere with the plan.", "Of {people} people with numbers like yours, {n} would fail somewhere with the plan.", fail, params);
}

/** A score in a few characters: "9:40", "8 rounds + 12", "31 of 40 reps, Ring dip"; for parts one after another. */
export const shortScore = (plan) => (plan.parts ?? [plan]).map((part) => inShort(part, endedAt)).join("; ");

/** Shorter still, for plans side by side: of one that is cut off the whole count, as the blocks they end in may differ. */
export const barestScore = (plan) => (plan.parts ?? [plan]).map((part) => inShort(part, endedCount)).join("; ");

function timeRange({ low, high, high_count }) {
  if (high === null) return _("{time} to a count of {count} at the cap", { time: clock(low), count: number(high_count) });
  return _("{low} to {high}", { low: clock(low), high: clock(high) });
}

/** The band from a good day to a bad one; where the cap divides it, a time on one side and a count on the other. */
function rangeOf({ score }) {
  const { kind, low, high, high_s } = score;
  if (low === null || low === undefined) return "";
  if (kind === "time") return timeRange(score);
  if (kind === "rounds") return _("{low} to {high}", { low: rounds(low, score.low_extra), high: rounds(high, score.high_extra) });
  if (kind === "load") return _("{low} to {high}", { low: liftOr(low), high: liftOr(high) });
  if (high_s) return _("a count of {count} to finishing in {time}", { count: number(low), time: clock(high_s) });
  return low === high ? _("a count of {count}", { count: number(low) }) : _("a count of {low} to {high}", { low: number(low), high: number(high) });
}

export const scoreRange = (plan) => (plan.parts ?? [plan]).map(rangeOf).filter(Boolean).join("; ");
