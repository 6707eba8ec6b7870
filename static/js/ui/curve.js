/** Strength left through the workout: an area for what limits, thinner lines for what else matters, and the same in words. */
import { el, svg } from "../lib/dom.js";
import { clock, percent } from "../lib/format.js";
import { blockAt, extent, finishBand, lowest, lows, mainFirst } from "../lib/curve.js";
import { scoreRange } from "../lib/score-words.js";
import { _, groupName, movementName } from "../lib/words.js";
import { curvePicture, lineName } from "./curve-picture.js";

const MOST_OTHERS = 3;
const WORTH_DRAWING = 0.8;  // a group that never falls under this is left out
const BREATHLESS = 0.7;     // breath is drawn from here on down

/** The lines to draw, what limits first: at a failure that is what gave out. */
export function drawnLines(plan) {
  const points = plan.reserve_curve;
  const found = lows(points);
  const [main, ...rest] = plan.mine?.verdict.fails ? found : mainFirst(found, plan);
  const breath = "breath" in points[0] ? lowest(points, "breath") : null;
  return [main, ...rest.filter((low) => low.reserve < WORTH_DRAWING).slice(0, MOST_OTHERS), ...(breath && breath.reserve < BREATHLESS ? [breath] : [])];
}

export function lowInWords(low, plan) {
  const block = blockAt(plan.blocks, low.t_s);
  const params = { left: percent(low.reserve), time: clock(low.t_s), movement: movementName(block.movement) };
  if (low.group === "breath") return _("breath, lowest: {left} left at {time}, in {movement}.", params);
  return _("{group}, lowest: {left} left at {time}, in {movement}.", { group: groupName(low.group), ...params });
}

const sample = (name) => svg("svg", { class: "curve__sample", viewBox: "0 0 28 8", "aria-hidden": "true" }, svg("line", { class: name, x1: 0, x2: 28, y1: 4, y2: 4 }));

const entry = (name, words, key = false) => el("li", { class: key ? "curve__key" : null }, sample(name), el("span", {}, words));

function bandInWords({ low_s, high_s, to_cap }) {
  const times = { low: clock(low_s), high: clock(high_s) };
  return to_cap ? _("from {low}, a good day, to the cap, which a bad one does not beat", times) : _("eight days of ten end between {low} and {high}", times);
}

/** The band where it is counted, not timed: told, as a count has no place on the clock. */
function countedBand(plan, cap_s) {
  const range = plan.score.kind === "time" || plan.score.high_s ? "" : scoreRange(plan);
  if (!range) return null;
  return el("li", {}, el("span", {}, cap_s ? _("eight days of ten, at {time}: {range}", { time: clock(cap_s), range }) : _("eight days of ten, by the end: {range}", { range })));
}

/** What each line, strip and mark is, and the lowest moments. */
function legend(plan, drawn, cap_s) {
  const band = finishBand(plan, cap_s);
  return el("ul", { class: "curve__legend" },
    drawn.map((low, index) => entry(lineName(low, index), lowInWords(low, plan))),
    plan.mine && entry("curve__before", _("the plan, for comparison")),
    band && entry("curve__finish-sample", bandInWords(band)), countedBand(plan, cap_s),
    cap_s && entry("curve__cap", plan.score.kind === "rounds" ? _("the end, at {time}", { time: clock(cap_s) }) : _("the cap, at {time}", { time: clock(cap_s) })),
    entry("curve__sets-sample", _("beneath: the sets; what lies between them is rest"), true),
    entry("curve__split", plan.intervals ? _("the end of each block") : _("splits: the end of each block or round; the wedges are a quarter, half and three quarters of the count"), true));
}

/** `cap_s`: the workout's cap or its end, null without one. */
export function curve(plan, cap_s = null) {
  if ((plan.reserve_curve ?? []).length < 2) return null;
  const drawn = drawnLines(plan);
  return el("figure", { class: "curve stack stack--s" },
    el("h2", {}, _("Strength left")),
    curvePicture(plan, drawn, lowInWords(drawn[0], plan), cap_s),
    el("figcaption", {}, legend(plan, drawn, extent(plan, cap_s).cap_s)));
}
