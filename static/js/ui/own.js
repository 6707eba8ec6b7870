/** Try my own: the plan's sets and rests, or its attempts, in the athlete's hands, with an answer to every change. One part of the workout at a time. */
import { el, find, findAll, inPlace, refill } from "../lib/dom.js";
import { EXAMPLES } from "../lib/own-examples.js";
import { belongs, fitted, fromPlan, keptBlocks, places, withKept } from "../lib/own.js";
import { OVERTAKEN } from "../lib/engine.js";
import { askWhoFails, canTry, planWith } from "../lib/own-plan.js";
import { partsOf } from "../lib/parts.js";
import { partName } from "../lib/round-words.js";
import { whoFails } from "../lib/score-words.js";
import { byRounds } from "../lib/tiers.js";
import { _ } from "../lib/words.js";
import { choice } from "./choice.js";
import { curve, drawnLines, lowInWords } from "./curve.js";
import { curvePicture } from "./curve-picture.js";
import { OwnAttempts } from "./own-attempts.js";
import { OwnBlock } from "./own-block.js";
import { verdictPanel } from "./own-verdict.js";
import { blockTitle, roundsTitle } from "./plan-blocks.js";
import { capOf } from "./plan-parts.js";

const SETTLE_MS = 350;  // after the last change: then it is stored, told and drawn in full
export class OwnScreen {
  #session;
  #view;
  #whole = null;
  #index = 0;
  #plan = null;
  #blocks = [];
  #shown = null;
  #attempts = null;
  #timer = null;

  /** `view`: the plan screen, for its plan and what the engine needs to judge. */
  constructor(root, session, view) {
    this.root = root;
    this.#session = session;
    this.#view = view;
    for (const button of findAll("own-example", root)) button.addEventListener("click", () => this.#take(EXAMPLES[button.dataset.ownExample](this.#plan, this.#units)));
    find("own-keep", root).addEventListener("click", () => this.#keep());
  }

  get #units() { return this.#session.athlete.units; }

  /** Show what was last tried, else what is kept, else the plan; also when the plan has changed beneath it. */
  open() {
    const { plan } = this.#view;
    const parts = plan === null ? [] : partsOf(plan);
    if (plan === this.#whole && plan !== null) return;
    this.#whole = plan;
    const open = parts.findIndex(canTry);
    find("own-empty", this.root).hidden = open >= 0;
    for (const name of ["own-how", "own-verdict", "own-examples", "own-blocks", "own-risk", "own-curve", "own-keep"]) find(name, this.root).hidden = open < 0;
    if (open < 0) return refill(find("own-parts", this.root));
    this.#index = parts[this.#index] && canTry(parts[this.#index]) ? this.#index : open;
    this.#openPart();
  }

  #openPart() {
    const parts = partsOf(this.#whole);
    this.#plan = parts[this.#index];
    const titles = this.#session.workout.parts ?? [];
    const items = parts.map((part, index) => ({ key: String(index), name: partName({ title: titles[index]?.title }, index), part })).filter(({ part }) => canTry(part));
    refill(find("own-parts", this.root), items.length > 1 && choice({
      legend: _("Which part?"), items, value: String(this.#index), onPick: (key) => this.#turnTo(Number(key)),
    }));
    for (const name of ["own-example=halves", "own-risk"]) find(name, this.root).hidden = Boolean(this.#plan.attempts);
    const { draft, own } = this.#session.state;
    const kept = [draft, own].map((tried) => keptBlocks(tried, this.#plan.option, this.#index));
    this.#take(kept.find((blocks) => belongs(blocks, this.#plan)) ?? fromPlan(this.#plan));
  }

  /** To another part; what was just tried in this one is kept. */
  #turnTo(index) {
    this.#store();
    this.#index = index;
    this.#openPart();
  }

  #take(blocks) {
    this.#blocks = blocks;
    this.#attempts = this.#plan.attempts ? new OwnAttempts({
      own: this.#blocks, lift: this.#plan.lift, units: this.#units, heading: "h2", onChange: (own) => { this.#blocks = own; this.#answer(); },
    }) : null;
    refill(find("own-blocks", this.root), this.#attempts ? [this.#attempts.node] : this.#groups());
    this.#answer();
  }

  /** Blocks that are done alike in several rounds are changed together. */
  #groups() {
    const asked = places(this.#plan);
    const groups = byRounds(this.#plan.blocks.map((block, index) => ({ ...block, ...this.#blocks[index], mode: null })));
    const count = groups.reduce((sum, group) => sum + group.rounds.length, 0);
    return groups.map((group) => [roundsTitle(group, count, Boolean(this.#plan.intervals)), groups.length > 1 && this.#copier(group),
      group.blocks.filter((block) => this.#blocks[block.index]).map((block) => new OwnBlock({
        own: this.#blocks[block.index], place: asked[block.index], title: blockTitle(block, this.#units), heading: count > 1 ? "h3" : "h2",
        onChange: (own) => this.#change(own, this.#indexes(block.block, group.rounds)),
      }).node)]).flat();
  }

  #indexes(place, rounds) {
    return this.#plan.blocks.flatMap((block, index) => (block.block === place && rounds.includes(block.round) ? [index] : []));
  }

  #copier(group) {
    const asked = places(this.#plan);
    const copy = () => this.#take(this.#blocks.map((own, index) => {
      const like = group.blocks.find((block) => block.block === asked[index].block);
      return own && this.#blocks[like.index] ? fitted(this.#blocks[like.index], asked[index]) : own;
    }));
    return el("p", {}, el("button", { type: "button", class: "button button--small", onclick: copy }, this.#plan.intervals ? _("Every interval like this") : _("Every round like this")));
  }

  #change(own, indexes) {
    this.#blocks = this.#blocks.map((old, index) => (indexes.includes(index) ? own : old));
    this.#answer();
  }

  async #answer() {
    clearTimeout(this.#timer);
    const shown = await planWith("own", this.#view.contextOf(this.#index), this.#plan, this.#blocks);
    if (!shown) return;
    this.#shown = shown;
    this.#attempts?.tell(shown.attempts);
    const drawn = shown.attempts ? [] : drawnLines(shown).slice(0, 1);
    const panel = find("own-verdict", this.root);
    panel.toggleAttribute("data-fails", Boolean(shown.mine.verdict.fails ?? shown.mine.verdict.breaks));
    this.#held(panel, () => refill(panel, el("div", { class: "verdict__words" }, verdictPanel(shown, drawn[0])),
      drawn.length > 0 && el("div", { class: "verdict__picture" }, curvePicture(shown, drawn, lowInWords(drawn[0], shown), this.#cap))));
    find("own-risk", this.root).toggleAttribute("data-stale", true);
    this.#timer = setTimeout(() => this.#settle(), SETTLE_MS);
  }

  /** Change what stands above the set that is being edited, and keep that where it is under the finger. */
  #held(otherwise, change) { inPlace(this.root.querySelector(".own__editor:not([hidden])") ?? otherwise, change); }

  get #cap() { return capOf(this.#view.contextOf(this.#index).workout, this.#plan.option); }

  #with(kept, blocks) { return withKept(kept, this.#plan.option, this.#index, blocks); }

  #store() { this.#session.change({ draft: this.#with(this.#session.state.draft, this.#blocks) }); }

  #settle() {
    this.#store();
    refill(find("own-curve", this.root), curve(this.#shown, this.#cap));
    this.#tellRisk();
    find("own-says", this.root).textContent = find("own-verdict", this.root).querySelector(".verdict__words").textContent;
  }

  /** The answer stands for the numbers as told, this for those who could be the athlete. */
  async #tellRisk() {
    if (this.#attempts) return;  // each has a chance of its own
    const asked = this.#blocks;
    const answer = await askWhoFails("own-risk", this.#view.contextOf(this.#index), this.#plan, asked);
    if (answer === OVERTAKEN || asked !== this.#blocks) return;  // changed since: that has an answer of its own
    const line = find("own-risk", this.root);
    this.#held(line, () => { line.textContent = "people" in answer ? whoFails(answer, true) : ""; });
    line.toggleAttribute("data-stale", false);
  }

  #keep() {
    const asked = this.#plan.attempts ? [] : places(this.#plan);
    const blocks = this.#blocks.map((own, index) => (asked[index] && own ? fitted(own, asked[index]) : own));
    this.#session.change({ own: this.#with(this.#session.state.own, blocks), draft: this.#with(this.#session.state.draft, blocks) });
    location.hash = "plan";
  }
}
