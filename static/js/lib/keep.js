/** What to do from the interval that breaks on, in place of work that no longer fits. Pure. */

const breaking = ({ reasons }) => (reasons ?? []).find(({ code }) => code === "interval_breaks");

/** How much of a block to keep; null where it is done whole. Of several things to do the same share of each, at least one. */
export function kept(plan, { round, movement, amount }) {
  const breaks = breaking(plan);
  if (!breaks || round < breaks.interval || movement === "rest") return null;
  return breaks.keep.code === "keep_reps" ? breaks.keep.count : Math.max(1, Math.floor(breaks.keep.share_fraction * amount));
}
