/** What an athlete says about today, and the gym's own equipment, as settings and numbers for the engine. Pure. */
import { partsOf } from "./parts.js";

export const NOTHING_SAID = { minutes: null, sore: [], room_c: null, people: 1, machine: true, wall: true, bar: true };

/** Parts of the body as the engine knows them. */
export const SORE_PARTS = ["neck", "shoulder", "elbow", "wrist", "upper back", "lower back", "hip", "thigh", "knee", "calf", "ankle"];

/** `gym` stands on the workout when the coach has said what there is: {rack, machines, wall, bar}. */
export function daySettings(today, gym) {
  return {
    rack: gym?.rack ?? null, machines: today.machine ? gym?.machines ?? null : [],
    wall_free: today.wall && (gym?.wall ?? true), bar_free: today.bar && (gym?.bar ?? true),
    room_c: today.room_c, lane_shared_by: today.people,
  };
}

export const dayNumbers = (numbers, today) => ({ ...numbers, sore: today.sore });

/** The largest set of each movement in the break-up the athlete means to do, of the first part; null before there is a plan. */
export function largestSets(shown) {
  const found = {};
  for (const { movement, unit, sets = [] } of (shown && !shown.error && partsOf(shown)[0].blocks) || []) {
    if (unit === "reps" && sets.length > 0) found[movement] = Math.max(found[movement] ?? 0, ...sets);
  }
  return shown ? found : null;
}
