/** What the player says in one line about its timing. */
import { clock } from "../lib/format.js";
import { _, ngettext } from "../lib/words.js";

const TOLD_MS = 60_000;     // what was planned anew is said this long
const WORTH_SAYING_S = 30;
const GRID_S = 15;          // said in steps, so that the line does not run like a clock

const rounded = (seconds) => clock(Math.round(seconds / GRID_S) * GRID_S);

const TOLD = {
  shortened: (n, gap) => ngettext("You are late: {n} step left out, done {gap} before the heat.", "You are late: {n} steps left out, done {gap} before the heat.", n, { gap }),
  lengthened: (n, gap) => ngettext("There is more time: {n} step more, done {gap} before the heat.", "There is more time: {n} steps more, done {gap} before the heat.", n, { gap }),
  waits: (n, gap) => _("The heat is later: keep warm when you are through, done {gap} before it.", { gap }),
  early: (n, gap) => _("You are early: keep warm when you are through, done {gap} before the heat.", { gap }),
  called: (n, gap) => _("Called: only what matters most now, done {gap} before the heat.", { gap }),
  kept: (n, gap) => _("The steps stay as they are: done {gap} before the heat.", { gap }),
  gap: (n, gap) => _("{gap} passed while the phone slept or its clock changed. Any step is one tap away, under “All steps”.", { gap }),
};

export function retimeLine(state, { told }, now_ms) {
  if (told && now_ms - told.at_ms < TOLD_MS) return TOLD[told.kind](told.n, rounded(told.gap_s));
  if (state.off_s === null || state.phase !== "running" || Math.abs(state.off_s) < WORTH_SAYING_S) return "";
  const says = { time: rounded(Math.abs(state.off_s)), gap: rounded(Math.max(0, state.gap_s)) };
  return state.off_s > 0 ? _("{time} early: done {gap} before the heat.", says) : _("{time} late, still fits: done {gap} before the heat.", says);
}
