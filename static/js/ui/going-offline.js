/** What the page tells about being kept: saved, newer, withdrawn, an update ready, or opened inside another app. */
import { askServer, isInsideAnotherApp, keepClass, startWorker } from "../lib/offline.js";
import { get, set } from "../lib/store.js";
import { _ } from "../lib/words.js";

const KEPT_CLASSES = "classes";

/** The list the offline page shows: what was opened on this phone. */
async function remember(code, title) {
  await set(KEPT_CLASSES, { ...(await get(KEPT_CLASSES)), [code]: { title, opened_ms: Date.now() } });
}

function offerUpdate(notices, busy, changeOver) {
  notices.show("update", _("An update is ready. Nothing you entered is lost."), { action: changeOver, label: _("Update now") });
  document.addEventListener("visibilitychange", () => { if (document.hidden && !busy()) changeOver(); });
}

async function sayWhatServerSays({ code, revision, languages, notices }) {
  const answer = await askServer(code, revision);
  if (answer === "withdrawn") notices.show("withdrawn",
    _("The coach has withdrawn this workout. What is on this phone stays; ask the coach before you rely on it."), { tone: "warn" });
  if (answer !== "newer") return;
  const bring = async () => {
    await keepClass(code, languages, document.documentElement.lang, true);
    location.reload();
  };
  notices.show("newer", _("The coach has published a newer version of this workout. Your numbers stay."), { action: bring, label: _("Show the newer version") });
}

export async function goOffline(page) {
  const { code, title, languages, notices, saved, busy } = page;
  if (isInsideAnotherApp(navigator.userAgent, navigator.standalone)) notices.show("inside",
    _("You are inside another app, which may forget this page. Open it in your own browser: use the app’s menu, “Open in browser”."), { tone: "warn" });
  remember(code, title).catch(() => {});
  navigator.storage?.persist?.().catch(() => {});  // a wish only: many browsers decide by themselves
  if (!("serviceWorker" in navigator)) return;
  if (navigator.serviceWorker.controller) sayWhatServerSays(page);  // otherwise this page has just come from the server
  try {
    await startWorker((changeOver) => offerUpdate(notices, busy, changeOver));
    saved.hidden = !(await keepClass(code, languages, document.documentElement.lang));
  } catch {
    saved.hidden = true;  // no worker here, for want of https or of room: the page itself still works
  }
}
