/** What the floor card says, once, for the screen, paper and the saved picture. */
import { howManyAndWhen } from "./attempt-words.js";
import { beyond, onward } from "./card-beyond.js";
import { clock, load, loadSize, number, setSize, shownUnit, span } from "./format.js";
import { headline } from "./headline.js";
import { kept } from "./keep.js";
import { partsOf } from "./parts.js";
import { fromInterval, partName, roundsName } from "./round-words.js";
import { shortScore } from "./score-words.js";
import { COUNTED_S } from "./set-words.js";
import { byRounds, counted, isCut, isUntilMiss } from "./tiers.js";
import { _, amount, breathCount, holdName, movementName, partSize, say } from "./words.js";

const MOST_CUE_WORDS = 4;
const MOST_TIMES = 4;  // of rounds done alike; of more only the last is shown

/** The sets, large: how often stands small and before, as one says it: "7 times 4". */
function big(block, units) {
  if (block.mode === "all_out") return [{ text: _("ALL OUT"), word: true }];
  if (block.sets.length < 2) return [{ text: setSize(block.sets[0], block.unit, units), word: false }];
  return counted(block.sets).map(({ size, times }) => ({ text: setSize(size, block.unit, units), times: times > 1 ? number(times) : null, word: false }));
}

const unitOf = (block, units) => ({ m: units.length, cal: _("calories"), s: _("s") })[block.unit] ?? null;

function wholeWay(block) {
  if (block.mode === "cadence") return _("steady");
  return isUntilMiss(block) ? _("until you miss") : _("in one go");
}

/** Beside the one number of a block without breaks: its unit and how it goes. */
function oneGo(block, units) {
  const unit = unitOf(block, units);
  const how = isCut(block) ? _("until the cap") : wholeWay(block);
  return unit ? `${unit}, ${how}` : how;
}

/** What stands beside the large numbers. */
function besideSets(block, units) {
  if (block.mode === "all_out") return null;
  return block.sets.length === 1 ? oneGo(block, units) : unitOf(block, units);
}

/** "rest 12 s, 4 breaths", or "rest 15 s, then 10 s" where the rests change. */
function restLine(block) {
  const rests = [...new Set((block.rests_s ?? []).filter((rest_s) => rest_s > 0))];
  if (rests.length === 0) return null;
  if (rests.length === 1 && rests[0] >= COUNTED_S) return _("rest {time}", { time: span(rests[0]) });
  if (rests.length === 1) return _("rest {time}, {breaths}", { time: span(rests[0]), breaths: breathCount(block.rests_breaths[0]) });
  return _("rest {first}, then {then}", { first: span(rests[0]), then: rests.slice(1).map(span).join(", ") });
}

function cueOf(block) {
  if (!block.cue) return null;
  const words = say(block.cue).split(/\s+/);
  return words.length <= MOST_CUE_WORDS ? words.join(" ") : null;
}

const isDone = (block) => block.end_s !== null && !isCut(block) && !(block.expected_at_cap < block.amount);

function holdLine(block) {
  if (!block.hold) return null;
  const hold = holdName(block.movement, block.hold);
  return block.hold_chosen ? _("{hold} (your choice)", { hold }) : hold;
}

const asked = (block, units) => (block.load_kg ? `${amount(block.amount, block.unit)}, ${load(block.load_kg, units)}` : amount(block.amount, block.unit));

function row(block, units, { rounds, by }) {
  const size = asked(block, units);
  return {
    place: number(block.block), title: movementName(block.movement),
    size: by && isDone(block) ? _("{size}, done by {time}", { size, time: clock(block.end_s) }) : size,
    rounds, tiers: big(block, units), unit: besideSets(block, units), rest: restLine(block), onward: isCut(block) ? onward(block, units) : null,
    hold: holdLine(block),
    turn: block.switch_every ? _("switch every {amount}", { amount: amount(block.switch_every, block.unit) }) : null,
    cue: cueOf(block),
  };
}

/** What to keep of a block from the interval that breaks, in place of its sets. */
function keptRow(block, keep, rounds, units) {
  return {
    place: number(block.block), title: movementName(block.movement), size: asked(block, units), rounds, tiers: [{ text: partSize(keep, block.unit), times: null, word: false }],
    unit: _("of {amount}", { amount: amount(block.amount, block.unit) }), rest: null, onward: null, hold: null, turn: null, cue: _("Keep the clock"),
  };
}

/** Over the rounds that are alike, when the last block of each is done: "Rounds 1 to 3, done by 1:32, 3:05, 4:40". */
function roundsLine(plan, group) {
  const name = roundsName(group.rounds, Boolean(plan.intervals));
  const place = Math.max(...plan.blocks.map((block) => block.block));
  const ends = plan.blocks.filter((block) => block.block === place && group.rounds.includes(block.round) && isDone(block)).map((block) => block.end_s);
  if (plan.intervals || ends.length === 0) return name;
  const shown = ends.length > MOST_TIMES ? ends.slice(-1) : ends;
  return _("{rounds}, done by {times}", { rounds: name, times: shown.map(clock).join(", ") });
}

function blockRows(plan, units) {
  const groups = byRounds(plan.blocks.filter((block) => block.sets.length > 0));
  const inRounds = plan.blocks.some((block) => block.round > 1);
  const one = (group) => (block, index) => {
    const keep = kept(plan, block);
    if (keep !== null) return keptRow(block, keep, index === 0 ? fromInterval(block.round) : null, units);
    return row(block, units, { rounds: index === 0 && inRounds ? roundsLine(plan, group) : null, by: !inRounds });
  };
  return groups.flatMap((group) => group.blocks.map(one(group)));
}

/** The loads of a heaviest lift, each with the moment to be at the bar. */
function attemptRows({ attempts, lift }, units) {
  return attempts.map(({ load_kg, at_s, rest_s }, index) => ({
    place: number(index + 1), title: movementName(lift.movement), size: howManyAndWhen(lift.amount, at_s),
    rounds: null, onward: null, tiers: [{ text: loadSize(load_kg, units), word: false }], unit: shownUnit("kg", units),
    rest: rest_s > 0 ? _("rest {time}", { time: span(rest_s) }) : null, hold: null, turn: null, cue: null,
  }));
}

/** What to chase: where it ends early, when to be at the block that decides; else the score. */
function scoreLine(plan) {
  const { reach, end } = headline(plan);
  if (end && !plan.intervals && !plan.mine?.verdict.fails) return reach ? _("{movement} by {time}", { movement: movementName(reach.movement), time: clock(reach.at_s) }) : "";
  return shortScore(plan);
}

const marked = (plan) => (plan.mine ? _("{score} (your own break-up)", { score: scoreLine(plan) }).trim() : scoreLine(plan));

function partRows(plan, units, name) {
  const rows = plan.attempts ? attemptRows(plan, units) : blockRows(plan, units);
  return name ? rows.map((one, index) => (index === 0 ? { ...one, rounds: [name, one.rounds].filter(Boolean).join(" \u00b7 ") } : one)) : rows;
}

export function cardModel(plan, title, units) {
  const parts = partsOf(plan);
  return {
    title, score: parts.map(marked).filter(Boolean).join("; "),
    after: beyond(parts.flatMap((part) => part.blocks.filter((block) => block.sets.length === 0)), parts.some((part) => part.mine?.verdict.fails), units),
    rows: parts.flatMap((part, index) => partRows(part, units, parts.length > 1 ? partName(part, index) : null)),
  };
}
