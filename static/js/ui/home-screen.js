/** Advice to put the page on the home screen, once and until it is waved away: there it is found again, and the phone keeps it longer. */
import { isApplePhone, isOnHomeScreen } from "../lib/platform.js";
import { _ } from "../lib/words.js";

/** Browsers that can ask by themselves are asked; Apple's only do it by hand, and forget after seven days of use without a visit. */
export function adviseHomeScreen(notices, session) {
  if (isOnHomeScreen() || session.athlete.homeScreen === "told") return;
  const told = () => { session.changeAthlete({ homeScreen: "told" }); notices.hide("home-screen"); };
  if (isApplePhone()) {
    notices.show("home-screen", _("Keep it at hand: tap the share button, then “Add to Home Screen”. The phone keeps what is there for longer."), { action: told, label: _("Understood") });
  }
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    const install = async () => { told(); await event.prompt(); };
    notices.show("home-screen", _("Keep it at hand, on your home screen: it opens from there with no connection."), { action: install, label: _("Put it there") });
  });
}
