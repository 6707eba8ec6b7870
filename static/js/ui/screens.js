/** One thing per screen, addressed by fragment, so that the phone's own back button works and loses nothing. */
import { findAll } from "../lib/dom.js";

export class Screens {
  #sections = new Map();
  #onShow;

  constructor(onShow) {
    this.#onShow = onShow;
    for (const section of findAll("screen")) this.#sections.set(section.dataset.screen, section);
    addEventListener("hashchange", () => this.#show(this.#asked() ?? "briefing", true));
  }

  /** Begin at the address's screen, else where the athlete was. */
  start(last) {
    const name = this.#asked() ?? (this.#sections.has(last) ? last : "briefing");
    if (!this.#asked() && name !== "briefing") history.replaceState(null, "", `#${name}`);
    this.#show(name, false);
  }

  #asked() {
    const name = location.hash.slice(1);
    return this.#sections.has(name) ? name : null;
  }

  #show(name, moved) {
    for (const [other, section] of this.#sections) section.hidden = other !== name;
    document.body.dataset.at = name;
    this.#markPath(name);
    if (moved) {
      scrollTo(0, 0);
      this.#sections.get(name).querySelector("[data-screen-title]").focus({ preventScroll: true });
    }
    this.#onShow(name);
  }

  /** A screen beside the path stands where the one it belongs to stands. */
  #markPath(name) {
    const links = findAll("path");
    const place = this.#sections.get(name).dataset.within ?? name;
    const here = links.findIndex((link) => link.dataset.path === place);
    links.forEach((link, index) => {
      link.toggleAttribute("data-passed", index < here);
      if (index === here) link.setAttribute("aria-current", "step");
      else link.removeAttribute("aria-current");
    });
  }
}
