/** What the floor card says, once, for the screen, paper and the saved picture. */
import { clock, load, number, setSize, span } from "./format.js";
import { byRounds, counted, isCut } from "./tiers.js";
import { _, amount, breathCount, holdName, movementName, say } from "./words.js";
import { headline } from "./headline.js";

const MOST_CUE_WORDS = 4;

/** The sets, large: how often stands small and before, as one says it: "7 times 4". */
function big(block) {
  if (block.mode === "all_out") return [{ text: _("ALL OUT"), word: true }];
  if (block.sets.length < 2) return [{ text: setSize(block.sets[0]), word: false }];
  return counted(block.sets).map(({ size, times }) => ({ text: setSize(size), times: times > 1 ? number(times) : null, word: false }));
}

/** Beside the one number of a block without breaks: its unit and how it goes. */
function oneGo(block) {
  const units = { m: _("m"), cal: _("calories"), s: _("s") };
  const whole = block.mode === "cadence" ? _("steady") : _("in one go");
  const how = isCut(block) ? _("until the cap") : whole;
  return units[block.unit] ? `${units[block.unit]}, ${how}` : how;
}

/** "rest 12 s, 4 breaths", or "rest 15 s, then 10 s" where the rests change. */
function restLine(block) {
  const rests = [...new Set((block.rests_s ?? []).filter((rest_s) => rest_s > 0))];
  if (rests.length === 0) return null;
  if (rests.length === 1) return _("rest {time}, {breaths}", { time: span(rests[0]), breaths: breathCount(block.rests_breaths[0]) });
  return _("rest {first}, then {then}", { first: span(rests[0]), then: rests.slice(1).map(span).join(", ") });
}

function cueOf(block) {
  if (!block.cue) return null;
  const words = say(block.cue).split(/\s+/);
  return words.length <= MOST_CUE_WORDS ? words.join(" ") : null;
}

function row(block, units, rounds) {
  const unbroken = block.mode !== "all_out" && block.sets.length === 1;
  return {
    place: number(block.block), title: movementName(block.movement),
    size: block.load_kg ? `${amount(block.amount, block.unit)}, ${load(block.load_kg, units)}` : amount(block.amount, block.unit),
    rounds, tiers: big(block), unit: unbroken ? oneGo(block) : null, rest: restLine(block),
    hold: block.hold ? holdName(block.movement, block.hold) : null,
    turn: block.switch_every ? _("switch every {amount}", { amount: amount(block.switch_every, block.unit) }) : null,
    cue: cueOf(block),
  };
}

function roundsOf(group, count) {
  if (count < 2) return null;
  const [first, last] = [number(group.rounds[0]), number(group.rounds.at(-1))];
  return group.rounds.length > 1 ? _("Rounds {first} to {last}", { first, last }) : _("Round {first}", { first });
}

/** What lies beyond the cap in one line, each movement once: "If there is time: Pull-up, Row." */
function beyond(blocks) {
  const names = [...new Set(blocks.map((block) => movementName(block.movement)))];
  return names.length ? _("If there is time left: {movements}", { movements: names.join(", ") }) : null;
}

export function cardModel(plan, title, units) {
  const groups = byRounds(plan.blocks.filter((block) => block.sets.length > 0));
  const count = Math.max(...plan.blocks.map((block) => block.round));
  const told = headline(plan);
  const reach = told.reach && _("{movement} by {time}", { movement: movementName(told.reach.movement), time: clock(told.reach.at_s) });
  const score = told.finishes ? clock(told.likely) : reach;
  const after = beyond(plan.blocks.filter((block) => block.sets.length === 0));
  const rows = groups.flatMap((group) => group.blocks.map((block, index) => row(block, units, index === 0 ? roundsOf(group, count) : null)));
  return { title, score: score ?? "", after, rows };
}
