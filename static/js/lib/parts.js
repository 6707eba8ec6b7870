/** A workout in parts, each with a plan and a score of its own; everything else is a workout of one part. */

export const partsOf = (plan) => plan.parts ?? [plan];

/** One part as a workout of its own; what it does not say, the whole says. */
export function partWorkout(workout, index) {
  const { parts, ...whole } = workout;
  return parts ? { ...whole, ...parts[index], movements: parts[index].movements ?? whole.movements } : workout;
}

/** The plan, each of its parts knowing its own title. */
export function withTitles(plan, workout) {
  return plan.parts ? { ...plan, parts: plan.parts.map((part, index) => ({ ...part, title: workout.parts[index].title })) } : plan;
}

export const optionsOf = (workout) => workout.options ?? workout.parts[0].options;
