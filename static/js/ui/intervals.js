/** The intervals side by side: work standing in each, what is left of it above, and the first that does not fit. */
import { el, svg } from "../lib/dom.js";
import { number, span } from "../lib/format.js";
import { _ } from "../lib/words.js";

const WIDE = 320;
const HIGH = 110;
const GAP = 2;
const MOST_OVER = 1.35;  // of an interval: work beyond it is cut off in the picture

const line = ({ interval, work_s, margin_s }) => (margin_s < 0
  ? _("Interval {interval}: {work} of work, {time} too much", { interval: number(interval), work: span(work_s), time: span(-margin_s) })
  : _("Interval {interval}: {work} of work, {time} left", { interval: number(interval), work: span(work_s), time: span(margin_s) }));

function column({ work_s, margin_s }, index, width) {
  const whole_s = work_s + margin_s;
  const y = (seconds) => HIGH * (1 - Math.min(seconds / whole_s, MOST_OVER) / MOST_OVER);
  const x = index * width;
  const bar = (name, top, bottom) => svg("rect", { class: name, x, width: Math.max(1, width - GAP), y: top, height: Math.max(0, bottom - top) });
  if (margin_s >= 0) return [bar("strip__rest", y(whole_s), y(work_s)), bar("strip__work", y(work_s), HIGH)];
  return [bar("strip__work", y(whole_s), HIGH), bar("strip__over", y(work_s), y(whole_s))];
}

function picture(intervals) {
  const width = WIDE / Math.max(intervals.length, 4);
  const limit = HIGH * (1 - 1 / MOST_OVER);
  const broken = intervals.find((one) => one.margin_s < 0);
  const tightest = intervals.reduce((least, one) => (one.margin_s < least.margin_s ? one : least));
  return svg("svg", { class: "strip", viewBox: `0 0 ${WIDE} ${HIGH + 4}`, role: "img", "aria-label": line(broken ?? tightest) },
    intervals.flatMap((one, index) => column(one, index, width)),
    svg("line", { class: "strip__limit", x1: 0, x2: WIDE, y1: limit, y2: limit }));
}

export function intervalStrip({ intervals }) {
  if (!intervals?.length) return null;
  const broken = intervals.find((one) => one.margin_s < 0);
  return el("section", { class: "stack stack--s", "data-intervals": "" },
    el("h2", {}, broken ? _("It breaks in interval {interval}", { interval: number(broken.interval) }) : _("Work and rest in every interval")),
    picture(intervals),
    el("p", { class: "soft" }, _("Yellow is work, blue is what is left of the interval; the line is where the next one begins.")),
    el("p", { class: "on-paper" }, _("White is work, grey what is left of the interval, black what is too much; the line is where the next one begins.")),
    el("details", { class: "panel" }, el("summary", {}, _("Every interval in words")),
      el("ul", {}, intervals.map((one) => el("li", { "data-breaks": one.margin_s < 0 }, line(one))))));
}
