/** The floor card as a picture, for a lock screen or a friend's phone: drawn on a canvas, in the colours of the screen. */

const WIDE = 1080;
const EDGE = 64;

/** Draws lines downwards; with no canvas yet it only measures, so that the height is known before. */
class Pen {
  constructor(canvas, fonts, colours) {
    this.pen = canvas.getContext("2d");
    this.fonts = fonts;
    this.colours = colours;
    this.y = EDGE;
  }

  font(size, numeral = false) {
    this.pen.font = `800 ${size}px ${numeral ? this.fonts.numeral : this.fonts.text}`;
  }

  /** Words, broken to the width. */
  words(text, size, colour) {
    this.font(size);
    const lines = [""];
    for (const word of text.split(" ")) {
      const longer = `${lines.at(-1)} ${word}`.trim();
      if (this.pen.measureText(longer).width > WIDE - 2 * EDGE && lines.at(-1)) lines.push(word);
      else lines[lines.length - 1] = longer;
    }
    for (const line of lines) this.#write(line, EDGE, size, colour);
  }

  #write(line, x, size, colour) {
    this.y += size;
    this.pen.fillStyle = colour;
    this.pen.fillText(line, x, this.y);
    this.y += size * 0.3;
  }

  /** The sets side by side in the numeral face, broken to the width. */
  sets(tiers, size) {
    let x = EDGE;
    this.y += size * 0.85;
    for (const { text, times, word } of tiers) {
      const parts = [[times ? `${times}\u00d7` : "", size * 0.5], [text, word ? size * 0.6 : size]];
      const width = parts.reduce((sum, part) => sum + this.#width(part), 0);
      if (x > EDGE && x + width > WIDE - EDGE) { x = EDGE; this.y += size; }
      for (const part of parts) x = this.#draw(part, x);
      x += size * 0.4;
    }
    this.y += size * 0.25;
  }

  #width([text, size]) {
    this.font(size, true);
    return this.pen.measureText(text).width;
  }

  #draw([text, size], x) {
    const width = this.#width([text, size]);
    this.pen.fillStyle = this.colours.ink;
    this.pen.fillText(text, x, this.y);
    return x + width;
  }

  strip() {
    this.pen.fillStyle = this.colours.tape;
    this.pen.fillRect(EDGE, this.y + 16, WIDE - 2 * EDGE, 8);
    this.y += 48;
  }
}

function draw(pen, model) {
  const { ink, rest } = pen.colours;
  pen.words(model.title, 64, ink);
  if (model.score) pen.words(model.score, 44, ink);
  for (const row of model.rows) {
    pen.strip();
    if (row.rounds) pen.words(row.rounds, 36, ink);
    pen.words(`${row.title} \u00b7 ${row.size}`, 44, ink);
    pen.sets(row.tiers, 210);
    for (const text of [row.unit, row.rest, row.onward, row.hold, row.turn].filter(Boolean)) pen.words(text, 42, rest);
    if (row.cue) pen.words(row.cue, 48, ink);
  }
  if (model.after) pen.strip();
  for (const line of model.after ? [model.after.title, ...model.after.lines] : []) pen.words(line, 36, ink);
  return pen.y + EDGE;
}

function paint(model, root) {
  const style = getComputedStyle(root);
  const part = (selector, name) => getComputedStyle(root.querySelector(selector) ?? root)[name];
  const fonts = { text: style.fontFamily, numeral: part("[data-digits]", "fontFamily") };
  const colours = { ground: style.backgroundColor, ink: style.color, rest: part(".card__rest", "color"), tape: part(".card__place", "backgroundColor") };
  const canvas = document.createElement("canvas");
  canvas.width = WIDE;
  canvas.height = Math.ceil(draw(new Pen(document.createElement("canvas"), fonts, colours), model));
  const pen = new Pen(canvas, fonts, colours);
  pen.pen.fillStyle = colours.ground;
  pen.pen.fillRect(0, 0, WIDE, canvas.height);
  draw(pen, model);
  return canvas;
}

/** Hand the picture to the phone's own sharing, or download it. True when one of them took it. */
export async function savePicture(model, root) {
  const blob = await new Promise((resolve) => paint(model, root).toBlob(resolve, "image/png"));
  const file = new File([blob], `${model.title}.png`, { type: "image/png" });
  if (navigator.maxTouchPoints > 0 && navigator.canShare?.({ files: [file] })) {
    return navigator.share({ files: [file] }).then(() => true, () => false);
  }
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(blob), download: file.name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  return true;
}
