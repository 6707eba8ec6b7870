/** The floor card: read from two to three metres on the floor. Its digits are fitted to the width, and never below what the eye needs. */
import { el, find } from "../lib/dom.js";
import { cardModel } from "../lib/card-model.js";
import { GOOD_DIGIT_PX, digitFont, measureDigit } from "../lib/fit.js";
import { withHolds } from "../lib/player-hold.js";
import { _ } from "../lib/words.js";
import { savePicture } from "./share-image.js";

const PART_OF_HEIGHT = 0.1;     // on a large screen digits grow with it
const ONE_COLUMN_ROWS = 5;     // more rows than this print in two columns

function tier({ text, times, word }) {
  return el("span", { class: `card__tier ${word ? "card__tier--word" : ""}`, "data-digits": word ? null : "" }, times && el("span", { class: "card__times" }, `${times}\u00d7`), text);
}

function block(row) {
  return el("li", { class: "card__block" },
    row.rounds && el("p", { class: "card__rounds" }, row.rounds),
    el("h2", { class: "card__name" }, el("span", { class: "card__place" }, row.place), row.title, el("small", {}, row.size)),
    el("p", { class: "card__sets" }, row.tiers.map(tier), row.unit && el("span", { class: "card__unit" }, row.unit)),
    row.rest && el("p", { class: "card__rest" }, row.rest),
    row.onward && el("p", { class: "card__onward" }, row.onward),
    el("p", { class: "card__more" }, [row.hold, row.turn].filter(Boolean).map((text) => el("span", {}, text))),
    row.cue && el("p", { class: "card__cue" }, row.cue));
}

/** Small beneath the large sets: what to do beyond the end. */
function after({ title, lines }) {
  return el("li", { class: "card__block card__after", "data-card-after": "" }, el("h2", { class: "card__further" }, title), lines.map((line) => el("p", {}, line)));
}

export class Card {
  constructor(root, session) {
    this.root = root;
    this.session = session;
    this.list = find("card-blocks", root);
    new ResizeObserver(() => this.fit()).observe(this.list);
    find("card-print", root).addEventListener("click", () => print());
    find("card-image", root).addEventListener("click", () => this.#save());
  }

  show(plan) {
    find("card-empty", this.root).hidden = Boolean(plan);
    this.list.replaceChildren();
    if (!plan) return;
    this.model = cardModel(withHolds(plan, this.session.state.holds), this.session.workout.title, this.session.athlete.units);
    find("card-score", this.root).textContent = this.model.score;
    this.list.append(...this.model.rows.map(block), ...(this.model.after ? [after(this.model.after)] : []));
    const rows = this.list.children.length;
    this.root.classList.toggle("card--long", rows > ONE_COLUMN_ROWS);
    this.list.style.setProperty("--rows", rows + (rows > ONE_COLUMN_ROWS ? rows % 2 : 0));
    this.fit();
  }

  /** Digits as large as the widest set of numbers allows, a second column where there is room. */
  fit() {
    const first = this.list.querySelector("[data-digits]");
    if (!first || this.list.clientWidth === 0) return;
    const style = getComputedStyle(first);
    const now_px = parseFloat(style.fontSize);
    const widest_em = Math.max(...[...this.list.querySelectorAll("[data-digits]")].map((one) => one.offsetWidth / now_px));
    const room_px = first.closest(".card__sets").clientWidth;
    const digit_em = measureDigit(style.fontFamily, style.fontWeight);
    const most_px = Math.max(GOOD_DIGIT_PX, innerHeight * PART_OF_HEIGHT) / digit_em;
    const size_px = digitFont(room_px, widest_em, digit_em, most_px);
    this.list.style.setProperty("--digits", `${size_px.toFixed(1)}px`);
  }

  async #save() {
    const says = find("card-says", this.root);
    const saved = this.model && await savePicture(this.model, this.root).catch(() => false);
    says.textContent = saved ? _("The picture is made.") : _("This phone would not save the picture. Take a screenshot instead.");
  }
}
