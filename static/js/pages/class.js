/** The class page: the screen where the athlete was comes first, its labels being in the page; what fills the screens comes after it. */
import { loadWords, useUnits } from "../lib/words.js";
import { Screens } from "../ui/screens.js";
import { code, page, session, workout } from "./class-context.js";

let path = null;   // the rest of the page, once it is there
const words = loadWords(document.documentElement.lang, code, workout.movements).catch(() => {});
await session.open();
new Screens((name) => {
  session.change({ screen: name });
  path?.opened(name);
}).start(session.state.screen);
page.dataset.usable = "";
performance.mark("usable");
addEventListener("beforeprint", () => document.querySelectorAll("details").forEach((one) => { one.open = true; }));
await words;
useUnits(session.athlete.units);
path = await import("./class-path.js");
await path.fillPath();
