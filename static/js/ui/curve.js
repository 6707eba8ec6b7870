/** Strength left through the workout: an area for what limits, thin lines for the next two, the blocks and sets beneath, and the same in words. */
import { el, svg } from "../lib/dom.js";
import { clock, percent } from "../lib/format.js";
import { HIGH, WIDE, across, blockAt, down, line, lows, mainFirst } from "../lib/curve.js";
import { _, groupName, movementName } from "../lib/words.js";

const BAND = 18;
const MARGIN = 40;        // left of the picture, for the scale
const MOST_OTHERS = 2;
const WORTH_DRAWING = 0.8;  // a group that never falls under this is left out

function scale() {
  return [1, 0.5, 0].map((level) => [
    svg("line", { class: "curve__grid", x1: 0, x2: WIDE, y1: down(level), y2: down(level) }),
    svg("text", { class: "curve__label", x: -6, y: down(level) + 4, "text-anchor": "end" }, percent(level)),
  ]);
}

function bands(blocks, end_s) {
  return blocks.filter((block) => block.start_s !== null).map((block, index) => svg("rect", {
    class: `curve__band ${index % 2 ? "curve__band--other" : ""}`,
    x: across(block.start_s, end_s), width: Math.max(1, across(block.end_s - block.start_s, end_s) - 1), y: HIGH + 6, height: BAND,
  }));
}

function sets(blocks, end_s) {
  const starts = blocks.flatMap((block) => block.set_starts_s ?? []);
  return starts.map((t_s) => svg("line", { class: "curve__set", x1: across(t_s, end_s), x2: across(t_s, end_s), y1: HIGH + 6, y2: HIGH + 6 + BAND }));
}

function inWords(low, plan) {
  const block = blockAt(plan.blocks, low.t_s);
  return _("{group}, lowest: {left} left at {time}, in {movement}.", {
    group: groupName(low.group), left: percent(low.reserve), time: clock(low.t_s), movement: movementName(block.movement),
  });
}

function picture(plan, points, drawn) {
  const end_s = points.at(-1).t_s;
  const [main, ...others] = drawn;
  const course = line(points, main.group, end_s);
  return svg("svg", { class: "curve__picture", viewBox: `${-MARGIN} -8 ${WIDE + MARGIN + 6} ${HIGH + BAND + 14}`, role: "img", "aria-label": inWords(main, plan) },
    svg("polygon", { class: "curve__area", points: `0,${HIGH} ${course} ${WIDE},${HIGH}` }),
    scale().flat(), bands(plan.blocks, end_s), sets(plan.blocks, end_s),
    others.map((low, index) => svg("polyline", { class: `curve__other curve__other--${index + 1}`, points: line(points, low.group, end_s) })),
    svg("polyline", { class: "curve__main", points: course }),
    svg("circle", { class: "curve__low", cx: across(main.t_s, end_s), cy: down(main.reserve), r: 5 }));
}

const sample = (name) => svg("svg", { class: "curve__sample", viewBox: "0 0 28 8", "aria-hidden": "true" }, svg("line", { class: name, x1: 0, x2: 28, y1: 4, y2: 4 }));

/** What each line is, and its lowest moment. */
function legend(plan, drawn) {
  const names = ["curve__main", "curve__other curve__other--1", "curve__other curve__other--2"];
  return el("ul", { class: "curve__legend" }, drawn.map((low, index) => el("li", {}, sample(names[index]), el("span", {}, inWords(low, plan)))));
}

export function curve(plan) {
  const points = plan.reserve_curve ?? [];
  if (points.length < 2) return null;
  const [main, ...rest] = mainFirst(lows(points), plan);
  const drawn = [main, ...rest.filter((low) => low.reserve < WORTH_DRAWING).slice(0, MOST_OTHERS)];
  return el("figure", { class: "curve stack stack--s" },
    el("h2", {}, _("Strength left")),
    picture(plan, points, drawn),
    el("div", { class: "curve__times soft" }, el("span", {}, clock(0)), el("span", {}, clock(points.at(-1).t_s))),
    el("figcaption", {}, legend(plan, drawn)));
}
