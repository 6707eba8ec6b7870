/** The page's side of the service worker: keep this class, learn of newer versions, change over when nobody is in the way. */

/** The content policy wants script addresses vouched for; ours is a constant. */
function trusted(address) {
  const policy = globalThis.trustedTypes?.createPolicy("heatside", { createScriptURL: (same) => same });
  return policy ? policy.createScriptURL(address) : address;
}

/** Ask the worker something and wait for its answer. */
function tell(worker, message) {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = (event) => resolve(event.data);
    worker.postMessage(message, [channel.port2]);
  });
}

/** Everything a class page needs beside the program itself. */
const addresses = (code, languages) => languages.flatMap((lang) => [`/w/${code}?lang=${lang}`, `/w/${code}/words/${lang}.json`]);

/** Keep a class page in every language, the shown one as its plain address; true once it is safely kept.
    What cannot be kept may belong to a newer version of the program: then that is looked for. */
export async function keepClass(code, languages, lang, anew = false) {
  const registration = await navigator.serviceWorker.ready;
  const { active } = registration;
  const answer = await tell(active, { ask: "keep", addresses: addresses(code, languages), shown: `/w/${code}?lang=${lang}`, anew });
  if (!answer.kept) registration.update().catch(() => {});  // with no connection there is nothing newer to be had
  return answer.kept;
}

/** Start the worker. `onUpdate` is given a function that changes over to a newer version. */
export async function startWorker(onUpdate) {
  const registration = await navigator.serviceWorker.register(trusted("/service-worker.js"), { updateViaCache: "none" });
  const offer = () => {
    if (registration.waiting && navigator.serviceWorker.controller) onUpdate(() => changeOver(registration.waiting));
  };
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", offer);
  });
  offer();
}

function changeOver(waiting) {
  let done = false;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (!done) location.reload();
    done = true;
  });
  waiting.postMessage({ ask: "take over" });
}

/** What the server says of this class now: "same", "newer", "withdrawn" or, with no connection, "unknown". */
export async function askServer(code, revision) {
  try {
    const response = await fetch(`/w/${code}/json`, { cache: "no-store", signal: AbortSignal.timeout(8000) });
    if (response.status === 410) return "withdrawn";
    if (!response.ok) return "unknown";
    return (await response.json()).revision > revision ? "newer" : "same";
  } catch {
    return "unknown";
  }
}

/** A chat program's built-in browser forgets what it keeps: no store of its own that we could count on. */
export function isInsideAnotherApp(agent, standalone) {
  if (/; wv\)/.test(agent)) return true;  // Android marks its embedded browser so
  return /iPhone|iPad/.test(agent) && !/Safari\//.test(agent) && !standalone;
}
