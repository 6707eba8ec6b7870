/** What a phone is, as far as people have to be told another thing on it. */

/** An iPhone or iPad; a newer iPad says that it is a Mac, but is touched. */
export function isApplePhone({ userAgent, maxTouchPoints } = navigator) {
  return /iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && maxTouchPoints > 1);
}

/** Opened from the home screen, without the browser's own bars. */
export const isOnHomeScreen = () => navigator.standalone === true || matchMedia("(display-mode: standalone)").matches;

/** Where a lock on the screen is promised and not kept: home-screen pages of Apple's before version 18.4, WebKit bug 254545. */
export function breaksItsPromise(agent, isHome) {
  const [, major, minor] = /OS (\d+)_(\d+)/.exec(agent) ?? [];
  return isHome && major !== undefined && (Number(major) < 18 || (Number(major) === 18 && Number(minor) < 4));
}
