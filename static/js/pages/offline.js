/** The offline page: the workouts this phone keeps, the latest opened first. */
import { el, find } from "../lib/dom.js";
import { get } from "../lib/store.js";

const classes = Object.entries((await get("classes").catch(() => null)) ?? {});
classes.sort(([, one], [, other]) => other.opened_ms - one.opened_ms);
const plans = await Promise.all(classes.map(([code]) => get(`class/${code}`).catch(() => null)));
find("kept-list").append(...classes.map(([code, { title }], index) => {
  const summary = plans[index]?.summary;
  return el("li", {}, el("a", { href: `/w/${code}` }, title), summary && ` \u00b7 ${summary}`);
}));
find("kept").hidden = classes.length === 0;
