/** What to see on the clock: when each block should be done, and each quarter of the whole. */
import { el } from "../lib/dom.js";
import { clock, number, span } from "../lib/format.js";
import { splits } from "../lib/splits.js";
import { _, amount, movementName } from "../lib/words.js";

function blockEnd({ movement, round, whole_round }, rounds) {
  if (whole_round) return _("Round {round} done", { round: number(round) });
  const name = movementName(movement);
  return rounds > 1 ? _("{movement} done, round {round}", { movement: name, round: number(round) }) : _("{movement} done", { movement: name });
}

function quarter({ share, movement, round, done, unit }, rounds) {
  const names = { 0.25: _("A quarter"), 0.5: _("Half"), 0.75: _("Three quarters") };
  const where = { part: names[share], movement: movementName(movement), done: amount(done, unit), round: number(round) };
  if (done === 0) return rounds > 1 ? _("{part}: {movement}, round {round}", where) : _("{part}: {movement}", where);
  return rounds > 1 ? _("{part}: {done} into {movement}, round {round}", where) : _("{part}: {done} into {movement}", where);
}

/** "Round 3 done, half of it all": where a quarter falls on the end. */
function endAndQuarter(one, rounds) {
  const end = blockEnd(one, rounds);
  const texts = { 0.25: () => _("{end}, a quarter of it all", { end }), 0.5: () => _("{end}, half of it all", { end }), 0.75: () => _("{end}, three quarters of it all", { end }) };
  return texts[one.quarter]?.() ?? end;
}

/** Of intervals the first, the middle one, the last and the tightest: when the work is done on the running clock, and what is left then. */
function intervalSplits({ intervals }) {
  const tightest = intervals.reduce((least, one) => (one.margin_s < least.margin_s ? one : least));
  const shown = new Set([intervals[0], intervals[Math.floor((intervals.length - 1) / 2)], tightest, intervals.at(-1)]);
  return intervals.filter((one) => shown.has(one)).map(({ interval, work_s, margin_s }) => {
    const params = { interval: number(interval), time: span(Math.abs(margin_s)) };
    const text = margin_s < 0 ? _("Interval {interval}: {time} over", params) : _("Interval {interval} done, {time} left", params);
    return el("div", {}, el("dt", {}, text), el("dd", { class: "numeral" }, clock((interval - 1) * (work_s + margin_s) + work_s)));
  });
}

const list = (rows) => el("section", { class: "stack stack--s", "data-splits": "" }, el("h2", {}, _("What to see on the clock")), el("dl", { class: "facts splits" }, rows));

export function splitsList(plan) {
  if (plan.intervals?.length && !plan.mine?.verdict.fails) return list(intervalSplits(plan));
  const found = plan.intervals || plan.attempts || plan.mine?.verdict.fails ? [] : splits(plan);
  if (found.length < 2) return null;
  const rounds = Math.max(...plan.blocks.map((block) => block.round));
  return list(found.map((one) => el("div", { class: one.share ? "splits__quarter" : null },
    el("dt", {}, one.share ? quarter(one, rounds) : endAndQuarter(one, rounds)), el("dd", { class: "numeral" }, clock(one.at_s)))));
}
