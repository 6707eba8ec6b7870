/** Keep the screen on while something runs. The lock is lost whenever the page is hidden, so it is asked for again. */

let wanted = false;
let lock = null;
let tell = () => {};

async function take() {
  if (!wanted || document.hidden || (lock && !lock.released)) return;
  lock = "wakeLock" in navigator ? await navigator.wakeLock.request("screen").catch(() => null) : null;  // refused on a low battery
  if (lock && !wanted) { letScreenSleep(); return; }  // it was let go while we waited
  tell(lock !== null);
}

document.addEventListener("visibilitychange", take);

/** Be told, each time it is asked for, whether the screen will stay on. */
export const onScreenKept = (listener) => { tell = listener; };

export function keepScreenOn() {
  wanted = true;
  return take();
}

export function letScreenSleep() {
  wanted = false;
  lock?.release().catch(() => {});
  lock = null;
}
