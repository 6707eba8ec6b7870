/** Says, wherever the screen has to stay on, what to do on a phone that will not keep it on for us. */
import { findAll } from "../lib/dom.js";
import { breaksItsPromise, isApplePhone, isOnHomeScreen } from "../lib/platform.js";
import { onScreenKept } from "../lib/wakelock.js";
import { _ } from "../lib/words.js";

function advice() {
  if (isApplePhone()) return _("This phone may let its screen go dark. For now, set Auto-Lock to Never: Settings, Display & Brightness.");
  return _("This browser cannot keep the screen on: set the phone’s own screen time to the longest.");
}

export function hintAtScreen() {
  const isDoubtful = breaksItsPromise(navigator.userAgent, isOnHomeScreen());
  onScreenKept((isKept) => {
    for (const place of findAll("screen-hint")) {
      place.textContent = advice();
      place.hidden = isKept && !isDoubtful;
    }
  });
}
