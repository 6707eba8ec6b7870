/** Keep the screen on while something runs. The lock is lost whenever the page is hidden, so it is asked for again. */

let wanted = false;
let lock = null;

async function take() {
  if (!wanted || document.hidden || !("wakeLock" in navigator)) return;
  lock = await navigator.wakeLock.request("screen").catch(() => null);  // refused on a low battery
}

document.addEventListener("visibilitychange", take);

export function keepScreenOn() {
  wanted = true;
  return take();
}

export function letScreenSleep() {
  wanted = false;
  lock?.release().catch(() => {});
  lock = null;
}
