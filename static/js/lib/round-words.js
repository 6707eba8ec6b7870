/** What rounds, intervals and parts are called. */
import { number } from "./format.js";
import { _ } from "./words.js";

/** "Rounds 1 to 3", "Round 4", "Intervals 1 to 12". */
export function roundsName(rounds, areIntervals) {
  const params = { round: number(rounds[0]), first: number(rounds[0]), last: number(rounds.at(-1)) };
  if (areIntervals) return rounds.length > 1 ? _("Intervals {first} to {last}", params) : _("Interval {round}", params);
  return rounds.length > 1 ? _("Rounds {first} to {last}", params) : _("Round {round}", params);
}

export const fromInterval = (interval) => _("From interval {interval}", { interval: number(interval) });

/** A part of a workout by its place and, where it has one, its own title. */
export function partName({ title }, index) {
  const place = { number: number(index + 1), title: title && _(title) };
  return title ? _("Part {number}: {title}", place) : _("Part {number}", place);
}
