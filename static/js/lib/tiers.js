/** A plan in a shape a tired head can hold: equal sets counted together, equal rounds shown once. */

/** Equal sets counted together: [8, 5, 5, 5] -> [{size: 8, times: 1}, {size: 5, times: 3}]. */
export function counted(sets) {
  const found = [];
  for (const size of sets) {
    if (found.at(-1)?.size === size) found.at(-1).times += 1;
    else found.push({ size, times: 1 });
  }
  return found;
}

/** Does the cap cut this block short: are there fewer in its sets than in the block? */
export const isCut = (block) => block.sets.length > 0 && block.sets.reduce((sum, size) => sum + size, 0) < block.amount - 1e-6;

/** A skill with a stop or more to expect: going on until a miss is the plan, not getting through in one go. */
export const isUntilMiss = (block) => (block.reasons ?? []).some(({ code, misses }) => code === "skill_until_miss" && misses >= 1);

/** The same with their rests: [8, 5, 5, 5], [15, 12, 12] -> [{size: 8, times: 1, rest_s: 15}, {size: 5, times: 3, rest_s: 12}]. */
export function tiers({ sets, rests_s, rests_breaths }) {
  const found = [];
  sets.forEach((size, index) => {
    const rest_s = rests_s[index] ?? null;
    const last = found.at(-1);
    if (last && last.size === size && (last.rest_s === rest_s || rest_s === null)) last.times += 1;
    else found.push({ size, times: 1, rest_s, breaths: rests_breaths[index] ?? null });
  });
  return found;
}

const likeness = (block) => JSON.stringify([block.movement, block.amount, block.mode, block.sets, block.rests_s, block.hold, isUntilMiss(block)]);

/** Blocks in groups of rounds that are to be done alike: [{rounds: [1, 2], blocks}]. */
export function byRounds(blocks) {
  const rounds = new Map();
  blocks.forEach((block, index) => {
    const round = block.round ?? 1;
    rounds.set(round, [...(rounds.get(round) ?? []), { ...block, index }]);
  });
  const groups = [];
  for (const [round, own] of rounds) {
    const last = groups.at(-1);
    if (last && own.map(likeness).join() === last.blocks.map(likeness).join()) last.rounds.push(round);
    else groups.push({ rounds: [round], blocks: own });
  }
  return groups;
}
