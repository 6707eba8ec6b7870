/** What a break-up of one's own brings, in words: the finish, its difference to the plan, and where it fails. */
import { el } from "../lib/dom.js";
import { clock, number, percent, span } from "../lib/format.js";
import { against } from "../lib/mine.js";
import { whereItFails } from "../lib/score-words.js";
import { _, movementName, ngettext } from "../lib/words.js";

const SAME_S = 0.5;  // what a clock does not show

/** "You would fail rep 31 of Ring dip, about 4:10." */
export function failSentence(plan) {
  const { movement, rep, round, at_s } = whereItFails(plan);
  const params = { movement: movementName(movement), rep: number(rep), round: number(round), time: clock(at_s) };
  return round > 1 ? _("You would fail rep {rep} of {movement} in round {round}, about {time}.", params) : _("You would fail rep {rep} of {movement}, about {time}.", params);
}

/** What stands behind "12 s slower" and the like: against the plan, or against what is shown just now. */
const TEXTS = {
  plan: {
    same: () => _("The same time as the plan."), slower: (time) => _("{time} slower than the plan.", { time }), quicker: (time) => _("{time} quicker than the plan.", { time }),
    finish: () => _("You would finish; the plan does not."), equal: () => _("As far as the plan."),
    fewer: (n) => ngettext("{n} fewer than the plan.", "{n} fewer than the plan.", n), more: (n) => ngettext("{n} more than the plan.", "{n} more than the plan.", n),
  },
  now: {
    same: () => _("The same time."), slower: (time) => _("{time} slower.", { time }), quicker: (time) => _("{time} quicker.", { time }),
    finish: () => _("You would finish."), equal: () => _("Just as far."),
    fewer: (n) => ngettext("{n} fewer counted.", "{n} fewer counted.", n), more: (n) => ngettext("{n} more counted.", "{n} more counted.", n),
  },
};

/** By the same judge, in words: "12 s slower than the plan." `than`: "plan" or "now". */
export function difference(verdict, before, than = "plan") {
  const { slower_s, fewer, finishes } = against(verdict, before);
  const says = TEXTS[than];
  if (slower_s !== undefined) {
    if (Math.abs(slower_s) < SAME_S) return says.same();
    const time = span(Math.round(Math.abs(slower_s)));
    return slower_s > 0 ? says.slower(time) : says.quicker(time);
  }
  if (finishes === true) return says.finish();
  if (fewer === undefined) return "";
  if (fewer === 0) return says.equal();
  return fewer > 0 ? says.fewer(fewer) : says.more(-fewer);
}

/** The one number: a time, a count, rounds; where it fails, the repetition. */
export function bigNumber(verdict) {
  if (verdict.fails) return _("Rep {rep}", { rep: number(verdict.fails.rep) });
  if (verdict.rounds !== null) return verdict.extra > 0 ? `${number(verdict.rounds)} + ${number(verdict.extra)}` : number(verdict.rounds);
  return verdict.finishes ? clock(verdict.time_s) : number(verdict.count);
}

function label(verdict) {
  if (verdict.fails) return _("It fails here");
  if (verdict.rounds !== null) return _("Rounds by the end");
  return verdict.finishes ? _("Finishing time") : _("Count at the cap");
}

/** The panel of the own screen: `plan` with the own break-up in it, see `mine.js`; `low`: the lowest moment of what limits. */
export function verdictPanel(plan, low) {
  const { verdict, before } = plan.mine;
  const left = _("Lowest strength left: {left}.", { left: percent(low.reserve) });
  return [
    el("p", { class: "eyebrow" }, label(verdict)),
    el("p", { class: "numeral verdict__number" }, bigNumber(verdict)),
    el("p", { class: "verdict__says" }, verdict.fails ? failSentence(plan) : `${difference(verdict, before)} ${left}`.trim()),
  ];
}

/** On the break-up: that this is the athlete's own, and what it brings. */
export const mineTag = () => el("p", {}, el("span", { class: "tag tag--mine", "data-mine": "" }, _("Your own break-up")));

export const mineSays = (plan) => el("p", { class: "lead" }, plan.mine.verdict.fails ? failSentence(plan) : difference(plan.mine.verdict, plan.mine.before));
