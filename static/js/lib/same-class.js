/** The same class open twice on one phone: what is changed on one page is known on the other at once, so that neither writes over it. */

const OF_THE_PAGE = ["screen", "revision", "summary"];   // where a page stands is its own; a summary follows from the rest

export class SameClass {
  #channel = null;

  /** `onChange(patch)` is told what another page changed of `name`. */
  constructor(name, onChange) {
    if (!("BroadcastChannel" in globalThis)) return;
    this.#channel = new BroadcastChannel(`heatside/${name}`);
    this.#channel.onmessage = ({ data }) => onChange(data);
  }

  tell(patch) {
    const shared = Object.entries(patch).filter(([name]) => !OF_THE_PAGE.includes(name));
    if (shared.length > 0) this.#channel?.postMessage(structuredClone(Object.fromEntries(shared)));
  }
}
