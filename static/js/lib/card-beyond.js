/** What the floor card says small of what lies beyond the end: whole blocks, and the rest of one that is cut short. */
import { setsInWords } from "./set-words.js";
import { _, amount, movementName } from "./words.js";

const HAIR = 1e-6;

/** "Pull-up: 4, then 3s, rest about 10 s: three breaths"; only the name where no sets are known. */
function lineBeyond({ movement, unit, uncut, amount: whole }, units) {
  const name = movementName(movement);
  if (!(uncut?.sets.length > 0)) return name;
  return _("{movement}: {sets}", { movement: name, sets: uncut.sets.length === 1 ? amount(whole, unit) : setsInWords({ ...uncut, unit }, units) });
}

/** What lies beyond the end, small, each kind of block once: {title, lines}; null for nothing. */
export function beyond(blocks, fails, units) {
  const lines = [...new Set(blocks.map((block) => lineBeyond(block, units)))];
  return lines.length ? { title: fails ? _("If you get past it") : _("If you get there"), lines } : null;
}

const sum = (list) => list.reduce((total, one) => total + one, 0);

/** The last sets of a break-up that make up so much, the first of them only in part if need be. */
function lastOf(sets, left) {
  const found = [];
  for (let missing = left, index = sets.length - 1; missing > HAIR && index >= 0; missing -= sets[index], index -= 1) found.unshift(Math.min(missing, sets[index]));
  return found;
}

/** Of a block that the end cuts short, the sets beyond it: "and on: 3 × 3". */
export function onward({ sets, uncut, unit }, units) {
  const further = uncut && sets.length ? lastOf(uncut.sets, sum(uncut.sets) - sum(sets)) : [];
  return further.length ? _("and on: {sets}", { sets: setsInWords({ sets: further, rests_s: [], unit }, units) }) : null;
}
