/** Own break-ups before the engine's `judge`: the plan that is shown, with the athlete's own in it where one is kept. */
import { OVERTAKEN, ask } from "./engine.js";
import { withMine } from "./mine.js";
import { belongs, fromPlan, toJudge } from "./own.js";

const JUDGED_SHAPES = ["for_time", "amrap"];
const planJudged = new WeakMap();  // what the plan itself brings, asked once for each plan

/** Can this plan's break-up be changed by hand? One made of parts or intervals is not judged whole; a load has no sets. */
export const canTry = (workout, plan) => !workout.parts && JUDGED_SHAPES.includes(workout.shape) && fromPlan(plan).some((block) => block !== null);

/** Ask what these own blocks of a plan bring. `context`: {workout, numbers, settings}. */
export const judge = (slot, { workout, numbers, settings }, plan, blocks) => ask(slot, "judge", workout, numbers, settings, toJudge(blocks, plan));

/** What the plan's own blocks bring, by the same judge. */
export async function judgePlan(context, plan) {
  if (!planJudged.has(plan)) planJudged.set(plan, judge(Symbol("plan"), context, plan, fromPlan(plan)));
  return planJudged.get(plan);
}

/** The plan with these own blocks in it, null where a later question has overtaken this one or they cannot be judged. */
export async function planWith(slot, context, plan, blocks) {
  const before = await judgePlan(context, plan);
  const verdict = await judge(slot, context, plan, blocks);
  if (verdict === OVERTAKEN || verdict.error || before.error) return null;
  const option = context.workout.options.find(({ key }) => key === plan.option);
  return withMine(plan, verdict, before, option);
}

/** The plan as it is shown: with the break-up the athlete has kept, while it belongs to this plan. */
export async function shownPlan(context, plan, kept) {
  if (plan.parts || !kept || !canTry(context.workout, plan) || !belongs(kept, plan)) return plan;
  return await planWith("own-kept", context, plan, kept.blocks) ?? plan;
}
