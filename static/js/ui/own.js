/** Try my own: the plan's sets and rests in the athlete's hands, with an answer to every change. */
import { el, find, findAll, refill } from "../lib/dom.js";
import { example, inHalves, outHot } from "../lib/own-edits.js";
import { belongs, fitted, fromPlan, places } from "../lib/own.js";
import { canTry, planWith } from "../lib/own-plan.js";
import { byRounds } from "../lib/tiers.js";
import { _ } from "../lib/words.js";
import { curve, drawnLines, lowInWords } from "./curve.js";
import { curvePicture } from "./curve-picture.js";
import { OwnBlock } from "./own-block.js";
import { verdictPanel } from "./own-verdict.js";
import { blockTitle, roundsTitle } from "./plan-blocks.js";
import { capOf } from "./plan-parts.js";

const SETTLE_MS = 350;  // after the last change: then it is stored, told and drawn in full
const EXAMPLES = { hot: (plan) => example(plan, outHot), halves: (plan) => example(plan, inHalves), plan: fromPlan };

export class OwnScreen {
  #session;
  #view;
  #plan = null;
  #blocks = [];
  #shown = null;
  #timer = null;

  /** `view`: the plan screen, for its plan and what the engine needs to judge. */
  constructor(root, session, view) {
    this.root = root;
    this.#session = session;
    this.#view = view;
    for (const button of findAll("own-example", root)) button.addEventListener("click", () => this.#take(EXAMPLES[button.dataset.ownExample](this.#plan)));
    find("own-keep", root).addEventListener("click", () => this.#keep());
  }

  /** Show what was last tried, else what is kept, else the plan; also when the plan has changed beneath it. */
  open() {
    const { plan } = this.#view;
    const can = plan !== null && canTry(this.#session.workout, plan);
    find("own-empty", this.root).hidden = can;
    for (const part of ["own-verdict", "own-examples", "own-blocks", "own-curve", "own-keep"]) find(part, this.root).hidden = !can;
    if (!can || plan === this.#plan) return;
    this.#plan = plan;
    const { draft, own } = this.#session.state;
    this.#blocks = [draft, own].find((tried) => belongs(tried, plan))?.blocks ?? fromPlan(plan);
    this.#draw();
    this.#answer();
  }

  #take(blocks) {
    this.#blocks = blocks;
    this.#draw();
    this.#answer();
  }

  /** Blocks that are done alike in several rounds are changed together. */
  #draw() {
    const asked = places(this.#plan);
    const groups = byRounds(this.#plan.blocks.map((block, index) => ({ ...block, ...this.#blocks[index], mode: null })));
    const count = groups.reduce((sum, group) => sum + group.rounds.length, 0);
    const units = this.#session.athlete.units;
    const nodes = groups.map((group) => [roundsTitle(group, count), groups.length > 1 && this.#copier(group),
      group.blocks.filter((block) => this.#blocks[block.index]).map((block) => new OwnBlock({
        own: this.#blocks[block.index], place: asked[block.index], title: blockTitle(block, units), heading: count > 1 ? "h3" : "h2",
        onChange: (own) => this.#change(own, this.#indexes(block.block, group.rounds)),
      }).node)]);
    refill(find("own-blocks", this.root), nodes.flat());
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
    return el("p", {}, el("button", { type: "button", class: "button button--small", onclick: copy }, _("Every round like this")));
  }

  #change(own, indexes) {
    this.#blocks = this.#blocks.map((old, index) => (indexes.includes(index) ? own : old));
    this.#answer();
  }

  async #answer() {
    clearTimeout(this.#timer);
    const shown = await planWith("own", this.#view.context, this.#plan, this.#blocks);
    if (!shown) return;
    this.#shown = shown;
    const drawn = drawnLines(shown).slice(0, 1);
    const picture = curvePicture(shown, drawn, lowInWords(drawn[0], shown), this.#cap);
    const panel = find("own-verdict", this.root);
    panel.toggleAttribute("data-fails", Boolean(shown.mine.verdict.fails));
    panel.replaceChildren(el("div", { class: "verdict__words" }, verdictPanel(shown, drawn[0])), el("div", { class: "verdict__picture" }, picture));
    this.#timer = setTimeout(() => this.#settle(), SETTLE_MS);
  }

  get #cap() { return capOf(this.#session.workout, this.#plan.option); }

  #settle() {
    this.#session.change({ draft: { option: this.#plan.option, blocks: this.#blocks } });
    refill(find("own-curve", this.root), curve(this.#shown, this.#cap));
    find("own-says", this.root).textContent = find("own-verdict", this.root).querySelector(".verdict__words").textContent;
  }

  #keep() {
    const asked = places(this.#plan);
    const blocks = this.#blocks.map((own, index) => own && fitted(own, asked[index]));
    this.#session.change({ own: { option: this.#plan.option, blocks }, draft: { option: this.#plan.option, blocks } });
    location.hash = "plan";
  }
}
