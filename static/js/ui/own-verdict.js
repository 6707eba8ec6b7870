/** What a break-up of one's own brings, in words: the finish, its difference to the plan, and where it fails. */
import { el } from "../lib/dom.js";
import { clock, number, percent, span } from "../lib/format.js";
import { against } from "../lib/mine.js";
import { rounds, whereItFails } from "../lib/score-words.js";
import { _, movementName, ngettext } from "../lib/words.js";

const SAME_S = 0.5;  // what a clock does not show

/** "You would fail rep 31 of Ring dip, about 4:10." */
export function failSentence(plan) {
  const { movement, rep, round, at_s } = whereItFails(plan);
  const params = { movement: movementName(movement), rep: number(rep), round: number(round), time: clock(at_s) };
  return round > 1 ? _("You would fail rep {rep} of {movement} in round {round}, about {time}.", params) : _("You would fail rep {rep} of {movement}, about {time}.", params);
}

const bySpan = (seconds, slower, quicker) => (seconds > 0 ? slower(span(seconds)) : quicker(span(-seconds)));

/** Against the plan, by the same judge: "12 s slower than the plan." */
export function difference(verdict, before) {
  const { slower_s, fewer, finishes } = against(verdict, before);
  if (slower_s !== undefined) {
    if (Math.abs(slower_s) < SAME_S) return _("The same time as the plan.");
    return bySpan(slower_s, (time) => _("{time} slower than the plan.", { time }), (time) => _("{time} quicker than the plan.", { time }));
  }
  if (finishes === true) return _("You would finish; the plan does not.");
  if (fewer === undefined) return "";
  if (fewer === 0) return _("As far as the plan.");
  return fewer > 0 ? ngettext("{n} fewer than the plan.", "{n} fewer than the plan.", fewer) : ngettext("{n} more than the plan.", "{n} more than the plan.", -fewer);
}

/** The one number: a time, a count, rounds; where it fails, the repetition. */
export function bigNumber(verdict) {
  if (verdict.fails) return _("Rep {rep}", { rep: number(verdict.fails.rep) });
  if (verdict.rounds !== null) return rounds(verdict.rounds, verdict.extra);
  return verdict.finishes ? clock(verdict.time_s) : number(verdict.count);
}

function label(verdict) {
  if (verdict.fails) return _("It fails here");
  if (verdict.rounds !== null) return _("Likely score");
  return verdict.finishes ? _("Finishing time") : _("Count at the cap");
}

/** The panel of the own screen: `plan` with the own break-up in it, see `mine.js`. */
export function verdictPanel(plan) {
  const { verdict, before } = plan.mine;
  const left = _("Lowest strength left: {left}.", { left: percent(verdict.lowest_reserve) });
  return [
    el("p", { class: "eyebrow" }, label(verdict)),
    el("p", { class: "numeral verdict__number" }, bigNumber(verdict)),
    el("p", { class: "verdict__says" }, verdict.fails ? failSentence(plan) : `${difference(verdict, before)} ${left}`.trim()),
  ];
}

/** On the break-up: that this is the athlete's own, and what it brings. */
export const mineTag = () => el("p", {}, el("span", { class: "tag tag--mine", "data-mine": "" }, _("Your own break-up")));

export const mineSays = (plan) => el("p", { class: "lead" }, plan.mine.verdict.fails ? failSentence(plan) : difference(plan.mine.verdict, plan.mine.before));
