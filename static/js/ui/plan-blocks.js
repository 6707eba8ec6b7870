/** The break-up, block by block: sets as a row of large numerals standing on tape, the rests between them in the calm colour. */
import { el } from "../lib/dom.js";
import { clock, load, number, setName, span } from "../lib/format.js";
import { kept } from "../lib/keep.js";
import { pace } from "../lib/pace.js";
import { fromInterval, roundsName } from "../lib/round-words.js";
import { setsInWords } from "../lib/set-words.js";
import { byRounds, counted, isCut, isUntilMiss } from "../lib/tiers.js";
import { _, amount, holdName, movementName, partSize, say } from "../lib/words.js";
import { sortedReasons } from "./why.js";

/** Equal neighbours stand counted together; the gap after them, in the calm colour, is the rest. */
function numerals(block, units) {
  const found = counted(block.sets);
  return found.map(({ size, times }, index) => el("li", { class: "sets__set numeral", "data-rest": index < found.length - 1 ? "" : null },
    times > 1 && el("span", { class: "sets__times" }, `${number(times)}\u00d7`), setName(size, block.unit, units)));
}

/** How a block beyond the end would go. */
function ifReached(block, units) {
  if (block.reached !== false || !(block.uncut?.sets.length > 0)) return null;
  return el("p", { class: "soft", "data-if-reached": "" }, _("If you get there: {sets}.", { sets: setsInWords({ ...block.uncut, unit: block.unit }, units) }));
}

function wholeWay(block) {
  if (block.mode === "cadence") return _("Steady pace");
  return isUntilMiss(block) ? _("Until you miss") : _("In one go");
}

function body(block, units) {
  if (block.sets.length === 0) return [ifReached(block, units)];
  if (block.mode === "all_out") {
    return [el("p", { class: "numeral block__big" }, _("All out")), el("p", {}, _("No planned breaks: go until you must stop, start again at once."))];
  }
  if (block.mode === "unbroken" || (block.mode === "cadence" && block.sets.length < 2)) {
    const until = isCut(block) ? el("p", { class: "block__says" }, _("{done} until the cap comes", { done: amount(Math.floor(block.sets[0]), block.unit) })) : null;
    return [el("p", { class: "numeral block__big" }, wholeWay(block)), until];
  }
  return [
    el("ol", { class: "sets", "aria-hidden": "true" }, numerals(block, units)),
    el("p", { class: "block__says" }, setsInWords(block, units)),
  ];
}

/** Of rounds done alike the times are the first one's. */
function clockName({ plan, rounds }) {
  if (rounds.length < 2) return _("On the clock");
  const params = { round: number(rounds[0]) };
  return plan.intervals ? _("Interval {round} on the clock", params) : _("Round {round} on the clock", params);
}

/** Pace and hold are said again only in rounds where they change. */
function facts(block, context) {
  const { units, before } = context;
  const known = (name) => before?.[name] === block[name];
  const pairs = [
    block.seconds_per_unit && !known("seconds_per_unit") && [_("Pace"), pace(block, units)],
    block.switch_every && [_("Switch sides"), _("every {amount}", { amount: amount(block.switch_every, block.unit) })],
    block.hold && !known("hold") && [_("Hold"), holdName(block.movement, block.hold)],
    block.start_s !== null && [clockName(context), `${clock(block.start_s)} \u2013 ${clock(block.end_s)}`],
  ];
  const said = pairs.filter((pair) => pair && pair[1]);
  return said.length === 0 ? null : el("dl", { class: "facts" }, said.map(([term, text]) => el("div", {}, el("dt", {}, term), el("dd", {}, text))));
}

const adviceFor = ({ workout, option }, position) => (workout.advice ?? []).filter((one) => one.block === position && (one.option ?? option) === option);

export function advice(text) {
  return el("div", { class: "notice notice--advice" }, el("p", { class: "notice__title" }, _("Your coach says")), el("p", {}, _(text)));
}

/** Why, in a sentence, and what is unfolded below it; a block with nothing to unfold says all at once. */
function reasons(block, context) {
  const details = context.why?.(block, context.rounds) ?? null;
  const { first, behind } = sortedReasons(block);
  const lines = (details ? first : [...behind, ...first]).map((reason) => el("p", { class: "soft" }, say(reason)));
  return [lines.length > 0 && el("div", { class: "stack stack--s" }, lines), details];
}

export function blockTitle(block, units) {
  const size = amount(block.amount, block.unit);
  return block.load_kg ? _("{amount} at {load}", { amount: size, load: load(block.load_kg, units) }) : size;
}

/** "3 of 8 reps": what is left to do of a block in an interval that no longer holds all of it. */
function keptOnly(block, keep) {
  return [el("p", { class: "numeral block__big" }, _("{done} of {amount}", { done: partSize(keep, block.unit), amount: amount(block.amount, block.unit) })),
    el("p", { class: "block__says" }, _("Keep the clock: begin again when the next interval does."))];
}

const inFull = (block, context) => [body(block, context.units), facts(block, context), reasons(block, context)];

function one(block, context) {
  const position = block.block;
  const keep = kept(context.plan, block);
  return el("article", { class: "block stack", "data-block": block.index, "data-mode": block.mode },
    el("header", { class: "block__head" },
      el("span", { class: "block__place numeral", "aria-hidden": "true" }, number(position)),
      el(context.heading, { class: "block__title" }, movementName(block.movement), el("small", {}, blockTitle(block, context.units)))),
    keep === null ? inFull(block, context) : keptOnly(block, keep),
    context.before ? null : adviceFor(context, position).map((own) => advice(own.text)));
}

export const roundsTitle = (group, count, areIntervals) => (count < 2 ? null : el("h2", { class: "rounds" }, roundsName(group.rounds, areIntervals)));

const groupTitle = (plan, group, count) => (group.blocks.some((block) => kept(plan, block) !== null) ? el("h2", { class: "rounds" }, fromInterval(group.rounds[0]))
  : roundsTitle(group, count, Boolean(plan.intervals)));

/** `context`: {workout, option, units, why}; `why(block, rounds)` makes what is unfolded below a block's reasons. */
export function planBlocks(plan, context) {
  const groups = byRounds(plan.blocks);
  const count = groups.reduce((sum, group) => sum + group.rounds.length, 0);
  const heading = count > 1 ? "h3" : "h2";
  const before = (at, { block }) => groups[at - 1]?.blocks.find((other) => other.block === block);
  return groups.map((group, at) => [
    groupTitle(plan, group, count),
    ...group.blocks.map((block) => one(block, { ...context, plan, heading, rounds: group.rounds, before: before(at, block) })),
  ]).flat().filter(Boolean);
}
