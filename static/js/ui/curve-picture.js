/** Strength left as a picture: the lines, what is done beneath them, where each block ends, the cap and the range of the finish. */
import { svg } from "../lib/dom.js";
import { clock, percent } from "../lib/format.js";
import { HIGH, WIDE, across, down, extent, finishBand, line, setSpans } from "../lib/curve.js";
import { ends, quarters } from "../lib/splits.js";
import { _ } from "../lib/words.js";

const BAND = 18;        // height of the strip of sets
const UNDER = 6;        // from the lines to that strip
const MARGIN = 46;      // left of the picture, for the scale
const ABOVE = 22;       // above it, for the word at the cap
const TEXT_ROOM = 20;   // below, for times
const DIGIT = 9;        // of a time, so wide
const AIR = 6;          // between two times
const CROSS = 7;
const WEDGE = 4;

const text = (x, y, what, anchor = "end") => svg("text", { class: "curve__label", x, y, "text-anchor": anchor }, what);

const scale = () => [1, 0.5, 0].map((level) => [
  svg("line", { class: "curve__grid", x1: 0, x2: WIDE, y1: down(level), y2: down(level) }), text(-6, down(level) + 5, percent(level)),
]);

/** Many upright strips as one path: drawing them singly would be too slow under a moving finger. */
function strips(name, spans, whole_s, y, height) {
  const one = ({ start_s, end_s }) => {
    const wide = Math.max(0.75, across(end_s - start_s, whole_s)).toFixed(1);
    return `M${across(start_s, whole_s).toFixed(1)},${y}h${wide}v${height}h-${wide}z`;
  };
  return svg("path", { class: name, d: spans.map(one).join("") });
}

const rect = (name, from_s, to_s, end_s, y, height) => svg("rect", { class: name, x: across(from_s, end_s), width: Math.max(0.75, across(to_s - from_s, end_s)), y, height });

/** Sets stand on the strip as on tape; what lies bare between them is rest. */
function sets(blocks, end_s) {
  const within = (spans) => spans.filter((span) => span.start_s < end_s).map((span) => ({ start_s: span.start_s, end_s: Math.min(span.end_s, end_s) }));
  const done = blocks.filter((block) => block.start_s !== null);
  return [strips("curve__rest", within(done), end_s, HIGH + UNDER + BAND / 3, BAND / 3), strips("curve__band", within(done.flatMap(setSpans)), end_s, HIGH + UNDER, BAND)];
}

/** Room of a time under its mark: in the middle, but inside the picture. */
function roomOf(x, words) {
  const wide = DIGIT * words.length;
  const end = Math.min(x + wide / 2, WIDE + 6);
  return { start: end - wide, end };
}

/** A mark at each block's end (each round's, where they are many), with its time where there is room; the last time always. */
function splits(plan, end_s) {
  const marks = ends(plan).map((one) => one.at_s).filter((at_s) => at_s <= end_s + 1).map((at_s) => ({ x: across(at_s, end_s), words: clock(at_s) }));
  const rooms = marks.map(({ x, words }) => roomOf(x, words));
  let free = 0;
  return marks.map(({ x, words }, index) => {
    const { start, end } = rooms[index];
    const fits = index === marks.length - 1 || (start >= free && end + AIR <= rooms.at(-1).start);
    if (fits) free = end + AIR;
    return [svg("line", { class: "curve__split", x1: x, x2: x, y1: 0, y2: HIGH + UNDER + BAND }), fits && text(end, HIGH + UNDER + BAND + 16, words)];
  });
}

/** Under the strip a wedge points to each quarter of the count. */
function quarterMarks(plan, end_s) {
  if (plan.intervals || plan.mine?.verdict.fails) return null;
  const y = HIGH + UNDER + BAND;
  const wedge = ({ at_s }) => `M${across(at_s, end_s).toFixed(1)},${y}l-${WEDGE},${WEDGE}h${2 * WEDGE}z`;
  return svg("path", { class: "curve__quarter", d: quarters(plan).filter(({ at_s }) => at_s <= end_s).map(wedge).join("") });
}

function limits(plan, { end_s, cap_s }) {
  const band = finishBand(plan, cap_s);
  return [
    band && rect("curve__finish", band.low_s, band.high_s, end_s, 0, HIGH),
    cap_s && [svg("line", { class: "curve__cap", x1: across(cap_s, end_s), x2: across(cap_s, end_s), y1: -4, y2: HIGH + UNDER + BAND }),
      text(across(cap_s, end_s) + 4, -6, plan.score.kind === "rounds" ? _("end") : _("cap"))],
  ];
}

function failure(points, group, end_s) {
  const [x, y] = [across(points.at(-1).t_s, end_s), down(points.at(-1)[group])];
  return svg("path", { class: "curve__fail", d: `M${x - CROSS},${y - CROSS}l${2 * CROSS},${2 * CROSS}m0,${-2 * CROSS}l${-2 * CROSS},${2 * CROSS}` });
}

/** `drawn`: lows in the order of their lines, the first one filled. `label` stands for the picture where it cannot be seen. */
export function curvePicture(plan, drawn, label, cap) {
  const points = plan.reserve_curve;
  const reach = extent(plan, cap);
  const { end_s } = reach;
  const [main, ...others] = drawn;
  const last = across(points.at(-1).t_s, end_s);
  const course = line(points, main.group, end_s);
  const before = plan.mine?.before.reserve_curve;
  return svg("svg", { class: "curve__picture", viewBox: `${-MARGIN} ${-ABOVE} ${WIDE + MARGIN + 8} ${HIGH + UNDER + BAND + TEXT_ROOM + ABOVE}`, role: "img", "aria-label": label },
    limits(plan, reach).flat(),
    svg("polygon", { class: "curve__area", points: `0,${HIGH} ${course} ${last},${HIGH}` }),
    scale().flat(), splits(plan, end_s).flat(), sets(plan.blocks, end_s).flat(2), quarterMarks(plan, end_s),
    others.map((low, index) => svg("polyline", { class: lineName(low, index + 1), points: line(points, low.group, end_s) })),
    before && svg("polyline", { class: "curve__before", points: line(before, main.group, end_s) }),
    svg("polyline", { class: lineName(main, 0), points: course }),
    plan.mine?.verdict.fails ? failure(points, main.group, end_s) : svg("circle", { class: "curve__low", cx: across(main.t_s, end_s), cy: down(main.reserve), r: 5 }));
}

/** Each line has a look of its own, so that none is told by colour alone. */
export function lineName({ group }, index) {
  if (index === 0) return "curve__main";
  return group === "breath" ? "curve__breath" : `curve__other curve__other--${index}`;
}
