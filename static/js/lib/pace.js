/** A pace as people read it: off a watch for repetitions, off the screen of a machine, off the road for a run. */
import { clock, number, span } from "./format.js";
import { _, energyOf } from "./words.js";

const ROWED_M = 500;       // what rowing machines show
const KM_M = 1000;
const MILE_M = 1609.344;   // exact: NIST SP 811, appendix B
const MINUTE_S = 60;

function ofLength(movement, seconds_per_m, units) {
  const kind = energyOf(movement);
  if (kind === "flywheel") return _("{time} for 500 m", { time: clock(ROWED_M * seconds_per_m) });
  if (kind !== "running") return null;
  return units.length === "ft" ? _("{time} a mile", { time: clock(MILE_M * seconds_per_m) }) : _("{time} a kilometre", { time: clock(KM_M * seconds_per_m) });
}

/** "one every 2.4 s", "16 calories a minute", "2:05 for 500 m"; null where nobody counts a pace. */
export function pace({ movement, unit, seconds_per_unit }, units) {
  if (unit === "reps") return _("one every {time}", { time: span(seconds_per_unit) });
  if (unit === "cal") return _("{n} calories a minute", { n: number(MINUTE_S / seconds_per_unit) });
  return unit === "m" ? ofLength(movement, seconds_per_unit, units) : null;
}
