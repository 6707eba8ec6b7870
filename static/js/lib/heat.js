/** When the heat is. Pure: what was chosen and the time now go in, what to show comes out. */

const MINUTE_MS = 60_000;
const NO_TEST_HOURS = 72;  // a maximal test this close to the heat would still be in the legs

export const heatFromMinutes = (minutes, now_ms) => ({ kind: "minutes", minutes, at_ms: now_ms + minutes * MINUTE_MS });

/** What a datetime-local field holds is local time without a zone; the browser reads it as such. */
export function heatFromField(text) {
  const at_ms = new Date(text).getTime();
  return Number.isFinite(at_ms) ? { kind: "at", at_ms } : null;
}

const isSet = (heat) => Number.isFinite(heat?.at_ms);

export const isClose = (heat, now_ms) => isSet(heat) && heat.at_ms - now_ms < NO_TEST_HOURS * 60 * MINUTE_MS;

export const minutesLeft = (heat, now_ms) => (isSet(heat) ? Math.floor((heat.at_ms - now_ms) / MINUTE_MS) : null);

const pair = (n) => String(Math.trunc(Math.abs(n))).padStart(2, "0");

function localDateTime(date) {
  return `${date.getFullYear()}-${pair(date.getMonth() + 1)}-${pair(date.getDate())}T${pair(date.getHours())}:${pair(date.getMinutes())}`;
}

/** For a datetime-local field. */
export const toField = (at_ms) => localDateTime(new Date(at_ms));

/** For the settings: local time with its offset from UTC, as the contract writes it. */
export function toIso(at_ms) {
  const date = new Date(at_ms);
  const offset_min = -date.getTimezoneOffset();
  return `${localDateTime(date)}:${pair(date.getSeconds())}${offset_min < 0 ? "-" : "+"}${pair(offset_min / 60)}:${pair(offset_min % 60)}`;
}
