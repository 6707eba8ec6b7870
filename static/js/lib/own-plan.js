/** Own break-ups before the engine's `judge`: the plan that is shown, with the athlete's own in it where one is kept. */
import { OVERTAKEN, ask } from "./engine.js";
import { asTold, withMine } from "./mine.js";
import { belongs, fromPlan, keptBlocks } from "./own.js";
import { toJudge } from "./to-judge.js";

const planJudged = new WeakMap();  // what the plan itself brings, asked once for each plan

/** Can this plan (one part of a workout in parts) be changed by hand? */
export const canTry = (plan) => !plan.parts && fromPlan(plan).some((block) => block !== null);

/** Ask what these own blocks of a plan bring. `context`: {workout, numbers, settings}, of a workout in parts the part's. */
export const judge = (slot, { workout, numbers, settings }, plan, blocks) => ask(slot, "judge", workout, numbers, settings, toJudge(blocks, plan, workout));

const isUntouched = (plan, blocks) => JSON.stringify(blocks) === JSON.stringify(fromPlan(plan));

/** Ask how many of those who could be this athlete fail with these own blocks of a plan; of the plan's own it says so itself. */
export const askWhoFails = async (slot, { workout, numbers, settings }, plan, blocks) => (isUntouched(plan, blocks) && plan.tried_on) || ask(slot, "who_fails", workout, numbers, settings, toJudge(blocks, plan, workout));

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
  return withMine(plan, blocks, isUntouched(plan, blocks) ? asTold(plan, verdict) : verdict, asTold(plan, before), option);
}

/** The plan as it is shown: with the break-up the athlete has kept for it, while it belongs to it. `index`: which part of the workout it is. */
export async function shownPlan(context, plan, kept, index) {
  const blocks = keptBlocks(kept, plan.option, index);
  if (!belongs(blocks, plan)) return plan;
  return await planWith(`own-kept-${index}`, context, plan, blocks) ?? plan;
}
