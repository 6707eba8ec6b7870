// What the engine's Python needs beyond JavaScript's own operators. Part of the module the build makes.

class EngineError extends Error {
  constructor(code, value) {
    super(`${code}: ${value}`);
    this.name = "EngineError";
    this.code = code;
    this.value = value;
  }
}

function rt_fail(code, value) {
  throw new EngineError(code, value);
}

function rt_broken(name, message) {
  const error = new Error(message);
  error.name = name;
  return error;
}

const rt_has = (dict, key) => Object.prototype.hasOwnProperty.call(dict, key);
const rt_is_text = (x) => typeof x === "string";
const rt_is_flag = (x) => typeof x === "boolean";
const rt_is_list = (x) => Array.isArray(x);
const rt_is_number = (x) => typeof x === "number" || typeof x === "boolean";
const rt_is_dict = (x) => !Array.isArray(x) && x !== null && typeof x === "object" && Object.getPrototypeOf(x) === Object.prototype; // lists first: most are

function rt_truth(x) {
  if (typeof x !== "object" || x === null) return x;
  if (Array.isArray(x)) return x.length > 0;
  return !rt_is_dict(x) || Object.keys(x).length > 0;
}

function rt_equals(a, b) {
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((item, index) => rt_equals(item, b[index]));
  }
  if (!rt_is_dict(a) || !rt_is_dict(b)) return a === b;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => rt_has(b, key) && rt_equals(a[key], b[key]));
}

// Negative, zero, positive; NaN where two numbers have no order. Lists go by their first difference.
function rt_compare(a, b) {
  if (!Array.isArray(a)) return a < b ? -1 : a > b ? 1 : a === b ? 0 : Number(a) - Number(b);
  for (let index = 0; index < a.length && index < b.length; index += 1) {
    if (!rt_equals(a[index], b[index])) return rt_compare(a[index], b[index]);
  }
  return a.length - b.length;
}

const rt_add = (a, b) => (Array.isArray(a) ? a.concat(b) : a + b);
const rt_concat = (a, b) => a.concat(b);

function rt_repeat(list, times) {
  const result = [];
  for (let done = 0; done < times; done += 1) for (const item of list) result.push(item);
  return result;
}

function rt_multiply(a, b) {
  if (typeof a === "number" && typeof b === "number") return a * b;
  const [sequence, times] = Array.isArray(a) || typeof a === "string" ? [a, b] : [b, a];
  if (typeof sequence === "string") return sequence.repeat(Math.max(0, times));
  return Array.isArray(sequence) ? rt_repeat(sequence, times) : a * b;
}

function rt_mod(a, b) {
  const rest = a % b;
  return rest !== 0 && rest < 0 !== b < 0 ? rest + b : rest;
}

function rt_floordiv(a, b) {
  const quotient = (a - rt_mod(a, b)) / b;
  const whole = Math.floor(quotient);
  return quotient - whole > 0.5 ? whole + 1 : whole;
}

const DECIMAL = /^[+-]?(\d+(_\d+)*(\.(\d+(_\d+)*)?)?|\.\d+(_\d+)*)(e[+-]?\d+(_\d+)*)?$/i;
const UNUSUAL = /^([+-]?)(inf|infinity|nan)$/i;

function rt_float(x) {
  if (rt_is_number(x)) return Number(x);
  if (!rt_is_text(x)) throw rt_broken("TypeError", "neither a number nor a text");
  const text = x.trim();
  if (DECIMAL.test(text)) return Number(text.replaceAll("_", ""));
  const unusual = UNUSUAL.exec(text);
  if (!unusual) throw rt_broken("ValueError", "not a number");
  return unusual[2].toLowerCase() === "nan" ? NaN : unusual[1] === "-" ? -Infinity : Infinity;
}

const rt_text = (x) => String(x === 0 ? 0 : x);
const rt_items_of = (x) => (rt_is_dict(x) ? Object.keys(x) : x);
const rt_len = (x) => rt_items_of(x).length;
const rt_list = (x) => (Array.isArray(x) ? x.slice() : Array.from(rt_items_of(x)));
const rt_all = (list) => list.every(rt_truth);
const rt_any = (list) => list.some(rt_truth);
const rt_reversed = (list) => list.slice().reverse();
const rt_enumerate = (list, start = 0) => rt_list(list).map((item, index) => [start + index, item]);
const rt_contains = (box, x) => (rt_is_dict(box) ? rt_has(box, x) : box.includes(x));

function rt_sum(list) {
  let total = 0;
  for (const item of list) total += Number(item);
  return total;
}

function rt_range(start, stop, step) {
  const result = [];
  for (let value = start; step > 0 ? value < stop : value > stop; value += step) result.push(value);
  return result;
}

function rt_zip(...lists) {
  const length = Math.min(...lists.map((list) => list.length));
  return Array.from({ length }, (_, index) => lists.map((list) => list[index]));
}

function rt_extreme(list, key, sign) {
  if (list.length === 0) throw rt_broken("ValueError", "the list is empty");
  let best = list[0];
  let bestKey = key === null ? best : key(best);
  for (let index = 1; index < list.length; index += 1) {
    const value = key === null ? list[index] : key(list[index]);
    if (rt_compare(value, bestKey) * sign < 0) [best, bestKey] = [list[index], value];
  }
  return best;
}

const rt_least = (list, key) => rt_extreme(rt_items_of(list), key, 1);
const rt_greatest = (list, key) => rt_extreme(rt_items_of(list), key, -1);

function rt_sorted(list, key, reverse) {
  const sign = reverse ? -1 : 1;
  const keyed = rt_list(list).map((item) => [key === null ? item : key(item), item]);
  return keyed.sort((a, b) => sign * rt_compare(a[0], b[0])).map((pair) => pair[1]);
}

function rt_sort(list, key, reverse) {
  list.splice(0, list.length, ...rt_sorted(list, key, reverse));
}
