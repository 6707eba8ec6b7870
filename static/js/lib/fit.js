/** How large the card's digits are. Measured, not felt: what the eye needs at a distance, then as large as the width allows.

    Angles: H = 2 D tan(angle / 2). At 2 m, 20 minutes of arc are 11.64 mm; at 3 m, 16 minutes are 13.96 mm
    (check table from ISO 9241-303's preferred 20' and least 16'). A phone's CSS pixel is taken as 0.16 mm. */

const PIXEL_MM = 0.16;
export const LEAST_DIGIT_PX = Math.ceil(11.64 / PIXEL_MM);  // 73
export const GOOD_DIGIT_PX = Math.ceil(13.96 / PIXEL_MM);   // 88

/** Font size in px. `digit_em`: height of a digit per font size; `widest_em`: the widest line per font size. */
export function digitFont(width_px, widest_em, digit_em, most_px) {
  const least = LEAST_DIGIT_PX / digit_em;
  const fitting = width_px / widest_em;
  return Math.max(least, Math.min(fitting, most_px));
}

/** Height of the digits of a font, per font size: measured, since every phone has another one. */
export function measureDigit(family, weight) {
  const pen = document.createElement("canvas").getContext("2d");
  pen.font = `${weight} 200px ${family}`;
  return pen.measureText("0").actualBoundingBoxAscent / 200;
}
