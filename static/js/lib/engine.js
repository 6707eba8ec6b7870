/** The door to the engine. Work begins after the frame is painted, and an answer that has been overtaken is dropped. */

export const OVERTAKEN = Symbol("overtaken");
const newest = new Map();
const opening = import("/engine.js");

const painted = () => new Promise((resolve) => {
  if (document.hidden) setTimeout(resolve);
  else requestAnimationFrame(() => setTimeout(resolve));
});

/** Call an engine function by name; `slot` names the question, so that only its latest asking is answered. */
export async function ask(slot, name, ...parameters) {
  const turn = (newest.get(slot) ?? 0) + 1;
  newest.set(slot, turn);
  const engine = await opening;
  await painted();
  if (newest.get(slot) !== turn) return OVERTAKEN;
  try {
    return engine[name](...structuredClone(parameters));
  } catch (error) {
    if (!error.code) throw error;
    return { error: { code: error.code, value: error.value } };
  }
}
