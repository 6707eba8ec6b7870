/** Numbers, times, loads and lengths as people read them. Inside everything is seconds, metres and kilograms. */

const KG_PER_LB = 0.45359237;  // exact: NIST SP 811, appendix B
const M_PER_FT = 0.3048;       // exact: NIST SP 811, appendix B

const POUND_REGIONS = ["US", "LR", "MM"];  // where gyms and roads go by pounds and feet; common knowledge, no source

const locale = document.documentElement.lang || "en";

const formats = new Map();

/** Making a formatter costs more than using it a hundred times. */
function formatter(options) {
  const key = JSON.stringify(options);
  if (!formats.has(key)) formats.set(key, new Intl.NumberFormat(locale, options));
  return formats.get(key);
}

export const number = (value, places = 0) => formatter({ maximumFractionDigits: places }).format(value);

/** A number as somebody would type it, to be typed over: no thousands set apart, which would be read back as decimals. */
export const typedNumber = (value) => formatter({ maximumFractionDigits: 1, useGrouping: false }).format(value);

export const percent = (fraction) => formatter({ style: "percent", maximumFractionDigits: 0 }).format(fraction);

/** 754 -> "12:34"; an hour and more -> "1:02:34". */
export function clock(seconds) {
  const whole = Math.max(0, Math.round(seconds));
  const pair = (n) => String(n).padStart(2, "0");
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${pair(minutes)}:${pair(whole % 60)}` : `${minutes}:${pair(whole % 60)}`;
}

/** A short span: seconds under a minute, a clock above. */
export function span(seconds) {
  return seconds < 60 ? `${number(seconds, seconds < 10 ? 1 : 0)}\u00a0s` : clock(seconds);
}

/** The units somebody starts in, by the region of the browser's language; all others in kg and m. */
export function unitsFor(language) {
  const inPounds = POUND_REGIONS.includes(new Intl.Locale(language || "en").region);
  return inPounds ? { mass: "lb", length: "ft" } : { mass: "kg", length: "m" };
}

export const toShown = (value, unit, units) => {
  if (unit === "kg" && units.mass === "lb") return value / KG_PER_LB;
  if (unit === "m" && units.length === "ft") return value / M_PER_FT;
  return value;
};

export const fromShown = (value, unit, units) => {
  if (unit === "kg" && units.mass === "lb") return value * KG_PER_LB;
  if (unit === "m" && units.length === "ft") return value * M_PER_FT;
  return value;
};

export const shownUnit = (unit, units) => ({ kg: units.mass, m: units.length })[unit] ?? unit;

/** A set as its bare number, metres in the person's unit: whole, except for a few metres or calories. */
export function setSize(size, unit, units) {
  const shown = toShown(size, unit, units);
  return number(shown, shown < 10 ? 1 : 0);
}

/** The same; a length with its unit's name. */
export const setName = (size, unit, units) => (unit === "m" ? `${setSize(size, unit, units)}\u00a0${units.length}` : setSize(size, unit, units));

/** The bare number of a load whose unit is named beside it. */
export const loadSize = (kg, units) => number(toShown(kg, "kg", units), units.mass === "lb" ? 0 : 1);

export const load = (kg, units) => `${loadSize(kg, units)}\u00a0${units.mass}`;

export function length(metres, units) {
  return `${number(toShown(metres, "m", units), units.length === "ft" ? 0 : 1)}\u00a0${units.length}`;
}

/** Read what was typed: comma or point decimals, times as m:ss. Null when it is no number at all; whether it is too small or too large is for `faultOf`. */
export function readNumber(text) {
  const tidy = text.trim().replace(/\s/g, "").replace(",", ".");
  const time = /^(\d{1,3}):([0-5]?\d(?:\.\d+)?)$/.exec(tidy);
  if (time) return Number(time[1]) * 60 + Number(time[2]);
  return /^[-\u2212]?(\d{1,15}(\.\d+)?|\.\d+)$/.test(tidy) ? Number(tidy.replace("\u2212", "-")) : null;
}

export function timeOfDay(date) {
  return new Intl.DateTimeFormat(locale, { hour: "numeric", minute: "2-digit" }).format(date);
}

export function dayAndTime(date) {
  return new Intl.DateTimeFormat(locale, { weekday: "short", day: "numeric", month: "short", hour: "numeric", minute: "2-digit" }).format(date);
}
