const NARROW = /[ .,:;'’|!il·()[\]/j]/;
const MIDDLE = /[frt-]/;
const WIDE = /[mwMW@%—]/;
const UPPER = /\p{Lu}/u;

/**
 * About how wide a line of words prints, in points: for laying out drawings, never for amounts.
 * Proportions of the letters' own typeface, a little on the wide side.
 */
export function textWidth(text: string, size: number, strong: boolean): number {
  let ems = 0;
  for (const sign of text) ems += signWidth(sign);
  return ems * size * (strong ? 1.07 : 1.02);
}

function signWidth(sign: string): number {
  if (NARROW.test(sign)) return 0.26;
  if (WIDE.test(sign)) return 0.82;
  if (MIDDLE.test(sign)) return 0.34;
  if (UPPER.test(sign)) return 0.6;
  return 0.51;
}
