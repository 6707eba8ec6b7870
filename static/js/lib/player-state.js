/** Where a warm-up is. Pure: the run (its steps, and what was tapped when) and the time now go in; nothing is counted down anywhere.

    run: {steps, ends_s, events: [{kind, at_ms}]}. Kinds: start, tick, skip, cut (left out by us, not by the athlete), back, more (`seconds`), go (`index`), hand, auto.
    Extras (`optional`) take no time: places are counted without them. */

export const inOrder = (steps) => steps.filter((step) => !step.optional);

export const totalSeconds = (steps) => steps.reduce((sum, step) => sum + step.seconds, 0);

/** The extras that go with a timed step: those listed right before it. */
export function extrasAt(steps, index) {
  const own = steps.indexOf(inOrder(steps)[index]);
  const first = steps.slice(0, Math.max(0, own)).findLastIndex((step) => !step.optional) + 1;
  return own < 0 ? [] : steps.slice(first, own);
}

const length_s = (place, steps) => Math.max(0, steps[place.index].seconds + place.more_s);

const endOf = (place, steps) => place.since_ms + length_s(place, steps) * 1000;

function leave(place, mark, at_ms) {
  place.marks[place.index] = mark;
  Object.assign(place, { index: place.index + 1, since_ms: at_ms, more_s: 0 });
}

/** Let steps that have run their time pass by themselves, unless the athlete goes on by hand. */
function pass(place, steps, at_ms) {
  while (place.auto && place.since_ms !== null && place.index < steps.length && endOf(place, steps) <= at_ms) leave(place, "done", endOf(place, steps));
}

function goTo(place, index, at_ms) {
  for (let passed = place.index; passed < index; passed += 1) place.marks[passed] = "skipped";
  place.marks.length = index;
  Object.assign(place, { index, since_ms: at_ms, more_s: 0 });
}

const TAPS = {
  start: (place, at_ms) => { place.since_ms = at_ms; },
  tick: (place, at_ms, steps) => { if (place.index < steps.length) leave(place, "done", at_ms); },
  skip: (place, at_ms, steps) => { if (place.index < steps.length) leave(place, "skipped", at_ms); },
  cut: (place, at_ms, steps) => { if (place.index < steps.length) leave(place, "cut", at_ms); },
  back: (place, at_ms) => goTo(place, Math.max(0, place.index - 1), at_ms),
  more: (place, at_ms, steps, event) => { place.more_s += event.seconds; },
  go: (place, at_ms, steps, event) => goTo(place, Math.min(event.index, steps.length), at_ms),
  hand: (place) => { place.auto = false; },
  auto: (place, at_ms, steps) => {
    if (place.index < steps.length && endOf(place, steps) < at_ms) leave(place, "done", at_ms);  // overtime is over, and nothing is run through
    place.auto = true;
  },
};

function placeAt(steps, events, now_ms) {
  const place = { index: 0, since_ms: null, more_s: 0, auto: true, marks: [] };
  for (const event of events) {
    const at_ms = Math.max(event.at_ms, place.since_ms ?? event.at_ms);  // a clock set back does not undo what was done
    pass(place, steps, at_ms);
    TAPS[event.kind]?.(place, at_ms, steps, event);
  }
  pass(place, steps, now_ms);
  return place;
}

/** Returns {phase: "waiting" | "running" | "over", index, step, next, marks, auto, since_ms, length_s, elapsed_s, left_s, ends_ms, gap_s, off_s}.
    `gap_s`: from the end of the last step to the heat as things go; `off_s`: how much longer that is than wished, early above zero. */
export function stateOf(run, now_ms, heat_ms) {
  const steps = inOrder(run.steps);
  const place = placeAt(steps, run.events, now_ms);
  if (place.since_ms === null) return { phase: "waiting", index: -1, marks: [], auto: place.auto };
  const step = steps[place.index] ?? null;
  const own_s = step ? length_s(place, steps) : 0;
  const elapsed_s = Math.max(0, now_ms - place.since_ms) / 1000;
  const ends_ms = step ? Math.max(endOf(place, steps), now_ms) + totalSeconds(steps.slice(place.index + 1)) * 1000 : place.since_ms;
  const gap_s = heat_ms === null ? null : (heat_ms - ends_ms) / 1000;
  return {
    phase: step ? "running" : "over", index: place.index, step, next: steps[place.index + 1] ?? null, count: steps.length,
    marks: place.marks, auto: place.auto, since_ms: place.since_ms, length_s: own_s, elapsed_s, left_s: own_s - elapsed_s,
    ends_ms, gap_s, off_s: gap_s === null ? null : gap_s - run.ends_s,
  };
}
