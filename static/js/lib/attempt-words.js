/** When an attempt at a heaviest lift comes, in words. The first is there at once: nobody reads a clock for it. */
import { clock, percent } from "./format.js";
import { _, amount } from "./words.js";

/** When to be at the bar, and how often it goes. */
export function goes({ at_s, chance_fraction, fits }) {
  if (fits === false) return _("This one comes after the time is over.");
  const chance = percent(chance_fraction);
  if (at_s === 0) return _("As soon as the clock starts. It goes {chance} of the time.", { chance });
  return _("At the bar by {time}. It goes {chance} of the time.", { time: clock(at_s), chance });
}

/** "1 rep, at the bar by 2:30". */
export function howManyAndWhen(reps, at_s) {
  if (at_s === 0) return _("{amount}, as soon as the clock starts", { amount: amount(reps, "reps") });
  return _("{amount}, at the bar by {time}", { amount: amount(reps, "reps"), time: clock(at_s) });
}
