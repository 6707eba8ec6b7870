/** What every part of the class page shares: the workout, the athlete's session, the place for notices. */
import { find } from "../lib/dom.js";
import { Session } from "../lib/session.js";
import { _ } from "../lib/words.js";
import { Notices } from "../ui/notices.js";

export const page = find("class-page");
export const { code } = page.dataset;
export const workout = JSON.parse(document.getElementById("workout").textContent);
export const screen = (name) => document.querySelector(`[data-screen="${name}"]`);
export const notices = new Notices(find("notices"));
export const session = new Session(workout, code, () => notices.show("storage",
  _("This phone would not save your numbers: its storage is full or closed to us. The plan works; write down what matters."), { tone: "warn" }));
