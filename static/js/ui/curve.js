/** Strength left through the workout: one line for what limits, thin ones for the rest, the blocks beneath, and the same in words. */
import { el, svg } from "../lib/dom.js";
import { clock, percent } from "../lib/format.js";
import { HIGH, WIDE, across, blockAt, down, line, lows } from "../lib/curve.js";
import { _, groupName, movementName } from "../lib/words.js";

const BAND = 16;
const WORTH_DRAWING = 0.9;  // a group that never falls under this is left out

function grid() {
  return [1, 0.5, 0].map((level) => [
    svg("line", { class: "curve__grid", x1: 0, x2: WIDE, y1: down(level), y2: down(level) }),
    svg("text", { class: "curve__label", x: 2, y: down(level) + (level === 0 ? -4 : 12) }, percent(level)),
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
  return _("{group}: {left} left at the lowest, at {time}, in {movement}.", { group: groupName(low.group), left: percent(low.reserve), time: clock(low.t_s), movement: movementName(block.movement) });
}

export function curve(plan) {
  const points = plan.reserve_curve ?? [];
  if (points.length < 2) return null;
  const end_s = points.at(-1).t_s;
  const all = lows(points);
  const drawn = all.filter((low, index) => index === 0 || low.reserve < WORTH_DRAWING);
  const main = all[0];
  const picture = svg("svg", { class: "curve__picture", viewBox: `0 -4 ${WIDE} ${HIGH + BAND + 12}`, role: "img", "aria-label": inWords(main, plan) },
    grid().flat(), bands(plan.blocks, end_s), sets(plan.blocks, end_s),
    drawn.slice(1).map((low) => svg("polyline", { class: "curve__other", points: line(points, low.group, end_s) })),
    svg("polyline", { class: "curve__main", points: line(points, main.group, end_s) }),
    svg("circle", { class: "curve__low", cx: across(main.t_s, end_s), cy: down(main.reserve), r: 5 }));
  return el("figure", { class: "curve stack stack--s" },
    el("h2", {}, _("Strength left")), picture,
    el("div", { class: "row row--spread soft" }, el("span", {}, clock(0)), el("span", {}, clock(end_s))),
    el("figcaption", {}, el("p", {}, inWords(main, plan)),
      drawn.length > 1 && el("details", {}, el("summary", {}, _("The other muscles, in words")), el("ul", {}, drawn.slice(1).map((low) => el("li", {}, inWords(low, plan)))))));
}
