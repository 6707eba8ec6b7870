/** The offline page: the workouts this phone keeps, the latest opened first. */
import { el, find } from "../lib/dom.js";
import { get } from "../lib/store.js";

const classes = Object.entries((await get("classes").catch(() => null)) ?? {});
classes.sort(([, one], [, other]) => other.opened_ms - one.opened_ms);
find("kept-list").append(...classes.map(([code, { title }]) => el("li", {}, el("a", { href: `/w/${code}` }, title))));
find("kept").hidden = classes.length === 0;
