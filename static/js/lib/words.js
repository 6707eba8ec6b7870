/** Text in the person's language. English is the key; what has no translation shows as written. */
import { clock, length, load, number, percent, setName, setSize, span } from "./format.js";

const ORDER = ["zero", "one", "two", "few", "many", "other"];  // gettext numbers its plural forms in this order
const state = { lang: "en", messages: {}, codes: {}, movements: {}, units: { mass: "kg", length: "m" } };

async function fetchWords(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.json();
}

/** Load the words of the interface and of one workout. `movements`: the workout's own entries. */
export async function loadWords(lang, code, movements) {
  const both = await Promise.all([fetchWords(`/words/${lang}.json`), fetchWords(`/w/${code}/words/${lang}.json`)]);
  Object.assign(state, { lang, movements, codes: both[0].codes, messages: { ...both[1].messages, ...both[0].messages } });
}

export const useUnits = (units) => { state.units = units; };

const put = (template, parameters) => template.replace(/\{(\w+)\}/g, (whole, name) => parameters[name] ?? whole);

export function _(text, parameters = {}) {
  const found = state.messages[text];
  const template = Array.isArray(found) ? found[0] : found;
  return put(template || text, parameters);
}

const rulesOf = new Map();

function pluralRules(lang) {
  if (!rulesOf.has(lang)) rulesOf.set(lang, new Intl.PluralRules(lang));
  return rulesOf.get(lang);
}

export function ngettext(one, many, n, parameters = {}) {
  const forms = state.messages[one];
  if (!Array.isArray(forms)) return put(n === 1 ? one : many, { n: number(n), ...parameters });
  const rules = pluralRules(state.lang);
  const used = ORDER.filter((name) => rules.resolvedOptions().pluralCategories.includes(name));
  const index = forms.length === 2 ? Number(rules.select(n) !== "one") : used.indexOf(rules.select(n));
  return put(forms[Math.min(index, forms.length - 1)] || many, { n: number(n), ...parameters });
}

export const movementName = (key) => (key === "rest" ? _("Rest") : _(state.movements[key]?.name ?? key));

/** What a movement's effort is reckoned by, such as "flywheel" or "running"; null for what has none. */
export const energyOf = (key) => state.movements[key]?.energy?.kind ?? null;

export function holdName(movement, key) {
  const hold = state.movements[movement]?.holds.find((one) => one.key === key);
  return _(hold?.name ?? key);
}

export const groupName = (group) => state.codes[`group.${group}`] ?? group;

/** A parameter's name says what it is: see the nomenclature in DEVELOPERS.md. */
function shape(name, value) {
  if (value === null || value === undefined) return "";
  if (Array.isArray(value)) return new Intl.ListFormat(state.lang).format(value.map((one) => shape(name, one)));
  if (typeof value === "object") return value.code ? say(value) : "";
  if (/movement$/.test(name)) return movementName(value);
  if (/group$/.test(name)) return groupName(value);
  if (typeof value === "string") return _(value);
  if (name === "at_s") return clock(value);
  if (/_s$/.test(name)) return span(value);
  if (/_kg$/.test(name)) return load(value, state.units);
  if (/_m$/.test(name)) return length(value, state.units);
  if (/_fraction$/.test(name)) return percent(value);
  return number(value, Math.abs(value) < 10 ? 1 : 0);
}

const SIZES = ["amount", "last", "max", "opening"];   // counted in the `unit` that stands beside them
const sizedOrShaped = (name, value, unit) => (unit && SIZES.includes(name) ? sizeName(value, unit) : shape(name, value));

/** Word one of the engine's codes: {"code": "...", parameters}. A plain text is only translated. */
export function say(coded) {
  if (typeof coded === "string") return _(coded);
  const template = state.codes[coded.code] ?? coded.code;
  const shaped = Object.fromEntries(Object.entries(coded).map(([name, value]) => [name, sizedOrShaped(name, value, coded.unit)]));
  return put(Array.isArray(template) ? template[coded.n === 1 ? 0 : template.length - 1] : template, shaped);
}

/** "40 reps", "80 m", "15 calories", "60 seconds". */
export function amount(n, unit, units = state.units) {
  if (unit === "m") return length(n, units);
  if (unit === "cal") return ngettext("{n} calorie", "{n} calories", n);
  if (unit === "s") return ngettext("{n} second", "{n} seconds", n);
  return ngettext("{n} rep", "{n} reps", n);
}

export const sizeName = (size, unit) => setName(size, unit, state.units);

/** The bare number of a part of something whose unit is named beside it: the 31 of "31 of 40 reps". */
export const partSize = (done, unit) => setSize(done, unit, state.units);

export const loadName = (kg) => load(kg, state.units);

export const breathCount = (n) => ngettext("{n} breath", "{n} breaths", n);
