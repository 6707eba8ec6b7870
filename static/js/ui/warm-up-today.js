/** What is different today: a few questions, all of them optional, kept for this workout. */
import { el, refill } from "../lib/dom.js";
import { NOTHING_SAID, SORE_PARTS } from "../lib/player-today.js";
import { _ } from "../lib/words.js";
import { choice } from "./choice.js";
import { Stepper } from "./stepper.js";

const ROOMS = () => [
  { key: "5", name: _("Cold"), note: _("about 5 °C") }, { key: "", name: _("Usual") },
  { key: "30", name: _("Warm"), note: _("about 30 °C") }, { key: "36", name: _("Hot"), note: _("about 36 °C") },
];

const PARTS = () => ({
  neck: _("neck"), shoulder: _("shoulder"), elbow: _("elbow"), wrist: _("wrist"), "upper back": _("upper back"), "lower back": _("lower back"),
  hip: _("hip"), thigh: _("thigh"), knee: _("knee"), calf: _("calf"), ankle: _("ankle"),
});

const toggle = (text, isOn, hook, act) => el("button", { type: "button", class: "button button--small", "data-today": hook, "aria-pressed": String(isOn), onclick: act }, text);

function group(title, buttons, hint) {
  return el("fieldset", { class: "stack stack--s" }, el("legend", {}, title), hint && el("p", { class: "soft" }, hint), el("div", { class: "row" }, buttons));
}

export const todayOf = (session) => ({ ...NOTHING_SAID, ...session.state.today });

/** Draw the questions into `place`; every answer is kept at once. */
export function askToday(place, session) {
  const today = todayOf(session);
  const keep = (patch) => { session.change({ today: { ...todayOf(session), ...patch } }); askToday(place, session); };
  const minutes = new Stepper({
    label: _("Minutes you have for it, the rest before the start included"), unit: _("min"), value: today.minutes,
    question: { low: 1, high: 60, step: 1, default: null }, onChange: (n) => keep({ minutes: n }) });
  const people = new Stepper({
    label: _("People on your lane"), unit: null, value: today.people > 1 ? today.people : null,
    question: { low: 1, high: 12, step: 1, default: 1 }, onChange: (n) => keep({ people: Math.round(n ?? 1) }) });
  const gear = [["machine", _("No machine free")], ["wall", _("No wall free")], ["bar", _("No bar free")]]
    .map(([name, text]) => toggle(text, !today[name], name, () => keep({ [name]: !today[name] })));
  const sore = SORE_PARTS.map((part) => toggle(PARTS()[part], today.sore.includes(part), part,
    () => keep({ sore: today.sore.includes(part) ? today.sore.filter((one) => one !== part) : [...today.sore, part] })));
  const room = choice({ legend: _("The room"), items: ROOMS(), value: String(today.room_c ?? ""), onPick: (key) => keep({ room_c: key === "" ? null : Number(key) }) });
  refill(place, minutes.node, group(_("What is not there"), gear),
    group(_("Sore today"), sore, _("Those parts are spared. With pain that is new or sharp, do not start; ask the coach, or a doctor.")), people.node, room);
}
