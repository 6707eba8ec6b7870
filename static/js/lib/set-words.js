/** Sets and rests as a coach says them: "5, then 4 × 4, then 3s, rest about 12 s: four breaths". Pure but for the words. */
import { number, setName, span } from "./format.js";
import { counted, tiers } from "./tiers.js";
import { _, breathCount } from "./words.js";

const MANY = 3;         // so many small sets up to the end are "3s"
export const COUNTED_S = 60;   // rests from here on are taken by the clock; chosen
const BREATH_S = 3;     // the engine's BREATH_S, for rests it gives without a count
const WORDED = () => [
  _("one breath"), _("two breaths"), _("three breaths"), _("four breaths"), _("five breaths"),
  _("six breaths"), _("seven breaths"), _("eight breaths"), _("nine breaths"), _("ten breaths"),
];

/** "four breaths"; more than ten as a number. */
export const breathWords = (n) => WORDED()[n - 1] ?? breathCount(n);

const breathsOf = (rest_s) => Math.max(1, Math.round(rest_s / BREATH_S));

/** "4", "4 × 4", or, up to the end, "3s", "singles". */
function run({ size, times }, unit, units, toTheEnd) {
  const name = setName(size, unit, units);
  if (times === 1) return name;
  if (toTheEnd && unit === "reps" && times >= MANY) return size === 1 ? _("singles") : _("{size}s", { size: name });
  return _("{times} \u00d7 {size}", { times: number(times), size: name });
}

const inTurn = (parts) => parts.reduce((before, part) => _("{before}, then {part}", { before, part }));

/** The sizes alone; `ends`: a last set that stands alone after two or more others is "to finish". */
function sizes(sets, unit, units) {
  const found = counted(sets);
  const closes = found.length > 2 && found.at(-1).times === 1;
  const lastMany = found.length - (closes ? 2 : 1);
  const said = found.map((one, index) => run(one, unit, units, found.length > 1 && index === lastMany));
  if (!closes) return inTurn(said);
  return _("{sets}, {last} to finish", { sets: inTurn(said.slice(0, -1)), last: said.at(-1) });
}

/** With its breaths up to a minute; nobody counts longer by them. */
const restWords = (rest_s, breaths) => (rest_s >= COUNTED_S ? _("rest about {time}", { time: span(rest_s) }) : inBreaths(rest_s, breaths));

const inBreaths = (rest_s, breaths) => _("rest about {time}: {breaths}", { time: span(rest_s), breaths: breathWords(breaths ?? breathsOf(rest_s)) });

/** Rests that change while the sets stay alike, in turn: "rest about 25 s, then 30 s, 35 s: 8 to 12 breaths". */
function changingRests(rests) {
  const times = rests.filter((rest_s, index) => index === 0 || rest_s !== rests[index - 1]).map(span);
  const [low, high] = [Math.min(...rests), Math.max(...rests)].map((rest_s) => breathsOf(rest_s));
  const turns = { first: times[0], then: times.slice(1).join(", ") };
  if (Math.max(...rests) >= COUNTED_S) return _("rest about {first}, then {then}", turns);
  if (low === high) return _("rest about {first}, then {then}: {high}", { ...turns, high: breathWords(high) });
  return _("rest about {first}, then {then}: {low} to {high}", { ...turns, low: number(low), high: breathCount(high) });
}

/** Where the rests change with the size each tier says its own. */
function tierByTier(found, unit, units) {
  return found.map(({ size, times, rest_s, breaths }) => {
    const sets = run({ size, times }, unit, units, false);
    return rest_s ? _("{sets}, {rest}", { sets, rest: restWords(rest_s, breaths) }) : sets;
  }).reduce((before, part) => _("{before}; then {part}", { before, part }));
}

/** `block`: {sets, rests_s, rests_breaths, unit}; the count of breaths may be missing. */
export function setsInWords({ sets, rests_s, rests_breaths = [], unit }, units) {
  const rests = rests_s.filter((rest_s) => rest_s > 0);
  const found = tiers({ sets, rests_s, rests_breaths });
  const change = new Set(rests).size > 1;
  if (change && found.length === counted(sets).length) return tierByTier(found, unit, units);
  const said = sizes(sets, unit, units);
  if (rests.length === 0) return said;
  return _("{sets}, {rest}", { sets: said, rest: change ? changingRests(rests) : restWords(rests[0], rests_breaths[0]) });
}
