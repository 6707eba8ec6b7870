/** What an athlete says about today, and the gym's own equipment, as settings and numbers for the engine. Pure. */

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
