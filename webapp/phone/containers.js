// Methods of Python's lists, dicts and texts. Part of the module the build makes.

function rt_record(...keysAndValues) {
  const result = {};
  for (let index = 0; index < keysAndValues.length; index += 2) result[keysAndValues[index]] = keysAndValues[index + 1];
  return result;
}

const rt_merge = (...dicts) => Object.assign({}, ...dicts);
const rt_dict = (x) => (Array.isArray(x) ? Object.fromEntries(x) : rt_merge(x));
const rt_keys = (dict) => Object.keys(dict);
const rt_values = (dict) => Object.values(dict);
const rt_items = (dict) => Object.entries(dict);
const rt_get = (dict, key, fallback = null) => (rt_has(dict, key) && dict[key] !== undefined ? dict[key] : fallback);

function rt_setdefault(dict, key, value) {
  if (!rt_has(dict, key)) dict[key] = value;
  return dict[key];
}

function rt_update(dict, other) {
  Object.assign(dict, other);
}

const rt_copy = (x) => (Array.isArray(x) ? x.slice() : rt_merge(x));

function rt_pop(x, where, fallback) {
  if (Array.isArray(x)) {
    const index = where === undefined ? x.length - 1 : where < 0 ? where + x.length : where;
    if (index < 0 || index >= x.length) throw rt_broken("IndexError", "nothing there to take");
    return x.splice(index, 1)[0];
  }
  if (!rt_has(x, where)) {
    if (fallback === undefined) throw rt_broken("KeyError", where);
    return fallback;
  }
  const value = x[where];
  delete x[where];
  return value;
}

function rt_extend(list, more) {
  const items = rt_items_of(more);
  const end = items.length; // it may be the list itself
  for (let index = 0; index < end; index += 1) list.push(items[index]);
}

function rt_insert(list, index, item) {
  list.splice(index, 0, item);
}

function rt_index(x, item) {
  const index = x.indexOf(item);
  if (index < 0) throw rt_broken("ValueError", "not in there");
  return index;
}

function rt_remove(list, item) {
  list.splice(rt_index(list, item), 1);
}

function rt_reverse(list) {
  list.reverse();
}

const rt_count = (list, wanted) => list.filter((item) => item === wanted).length;
const rt_join = (text, list) => list.join(text);
const rt_startswith = (text, start) => text.startsWith(start);
const rt_endswith = (text, end) => text.endsWith(end);
const rt_split = (text, at) => text.split(at);
const rt_strip = (text) => text.trim();
const rt_lower = (text) => text.toLowerCase();
const rt_upper = (text) => text.toUpperCase();
const rt_replace = (text, old, fresh) => text.split(old).join(fresh);
