/** What a number is called, where it is asked for and where it was filled in. */
import { clock } from "../lib/format.js";
import { _, movementName } from "../lib/words.js";

export function numberName(question) {
  const movement = question.movement && movementName(question.movement);
  const texts = {
    max_unbroken: () => _("{movement}: most in one go", { movement }),
    one_rep_max: () => _("{movement}: heaviest single", { movement }),
    repeat_test: () => _("{movement}: again, one minute after an all-out set", { movement }),
    wait_between_singles_s: () => _("{movement}: shortest wait between two good singles", { movement }),
    seconds_per_unit: () => _("{movement}: seconds for one, when fresh", { movement }),
    steady_s: () => _("{movement}: how long could you keep going, steadily?", { movement }),
    long_effort: () => _("{movement}: most in {time}, all out", { movement, time: clock(question.s) }),
    effort: () => (question.m ? _("{movement}: best time over {m} m", { movement, m: question.m }) : _("{movement}: a best time", { movement })),
    body_mass: () => _("Your body mass"),
    height: () => _("Your height"),
  };
  return texts[question.kind]?.() ?? question.kind;
}
