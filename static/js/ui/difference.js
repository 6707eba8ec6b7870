/** What one break-up brings against another, in words. */
import { number, span } from "../lib/format.js";
import { SAME_S, against } from "../lib/mine.js";
import { _, loadName, ngettext } from "../lib/words.js";

const SAME_KG = 0.01;

/** What stands behind "12 s slower" and the like: against the plan, or against what is shown just now. */
const TEXTS = {
  plan: {
    same: () => _("The same time as the plan."), slower: (time) => _("{time} slower than the plan.", { time }), quicker: (time) => _("{time} quicker than the plan.", { time }),
    finish: () => _("You would finish; the plan does not."), equal: () => _("As far as the plan."),
    fewer: (n) => ngettext("{n} fewer than the plan.", "{n} fewer than the plan.", n), more: (n) => ngettext("{n} more than the plan.", "{n} more than the plan.", n),
    fits: () => _("Every interval fits; with the plan one breaks."), sooner: (n) => ngettext("It breaks {n} interval sooner than the plan.", "It breaks {n} intervals sooner than the plan.", n),
    later: (n) => ngettext("It breaks {n} interval later than the plan.", "It breaks {n} intervals later than the plan.", n), breaks: () => _("With the plan every interval fits."),
    spare: () => _("As much to spare as in the plan."), less: (time) => _("{time} less to spare than in the plan.", { time }), freer: (time) => _("{time} more to spare than in the plan.", { time }),
    lift: () => _("Most likely the same load as in the plan."), lighter: (load) => _("Most likely {load} less than in the plan.", { load }), heavier: (load) => _("Most likely {load} more than in the plan.", { load }),
  },
  now: {
    same: () => _("The same time."), slower: (time) => _("{time} slower.", { time }), quicker: (time) => _("{time} quicker.", { time }),
    finish: () => _("You would finish."), equal: () => _("Just as far."),
    fewer: (n) => ngettext("{n} fewer counted.", "{n} fewer counted.", n), more: (n) => ngettext("{n} more counted.", "{n} more counted.", n),
    fits: () => _("Every interval fits then."), sooner: (n) => ngettext("It breaks {n} interval sooner.", "It breaks {n} intervals sooner.", n),
    later: (n) => ngettext("It breaks {n} interval later.", "It breaks {n} intervals later.", n), breaks: (n) => _("Then interval {interval} breaks.", { interval: n }),
    spare: () => _("As much to spare."), less: (time) => _("{time} less to spare in the tightest.", { time }), freer: (time) => _("{time} more to spare in the tightest.", { time }),
    lift: () => _("Most likely the same load."), lighter: (load) => _("Most likely {load} less.", { load }), heavier: (load) => _("Most likely {load} more.", { load }),
  },
};

function ofIntervals({ breaks, broke, less_s }, says) {
  if (breaks === null && broke !== null) return says.fits();
  if (breaks !== null && broke === null) return says.breaks(number(breaks));
  if (breaks !== broke) return breaks < broke ? says.sooner(broke - breaks) : says.later(breaks - broke);
  if (breaks !== null) return says.equal();
  if (Math.abs(less_s) < SAME_S) return says.spare();
  const time = span(Math.round(Math.abs(less_s)));
  return less_s > 0 ? says.less(time) : says.freer(time);
}

function ofLift(lighter_kg, says) {
  if (Math.abs(lighter_kg) < SAME_KG) return says.lift();
  return lighter_kg > 0 ? says.lighter(loadName(lighter_kg)) : says.heavier(loadName(-lighter_kg));
}

function ofTime(slower_s, says) {
  if (Math.abs(slower_s) < SAME_S) return says.same();
  const time = span(Math.round(Math.abs(slower_s)));
  return slower_s > 0 ? says.slower(time) : says.quicker(time);
}

/** By the same judge, in words: "12 s slower than the plan." `than`: "plan" or "now". */
export function difference(verdict, before, than = "plan") {
  const { slower_s, fewer, finishes, lighter_kg, ...more } = against(verdict, before);
  const says = TEXTS[than];
  if (lighter_kg !== undefined) return ofLift(lighter_kg, says);
  if (more.breaks !== undefined) return ofIntervals(more, says);
  if (slower_s !== undefined) return ofTime(slower_s, says);
  if (finishes === true) return says.finish();
  if (fewer === undefined) return "";
  if (fewer === 0) return says.equal();
  return fewer > 0 ? says.fewer(fewer) : says.more(-fewer);
}
