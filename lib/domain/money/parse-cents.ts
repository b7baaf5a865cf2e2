import type { Cents } from "./cents.ts";

/**
 * US dollars as typed (`18640`, `$18,640.00`, `-5`, `.5`) → cents, or null if it is not an amount
 * in whole cents. Commas must stand between thousands.
 */
export function parseCents(text: string): Cents | null {
  const plain = text.trim().replaceAll(/\s/g, "");
  const match = /^(-?)\$?(\d{1,3}(?:,\d{3})+|\d+)?(?:\.(\d{0,2}))?$/.exec(plain);
  if (match === null) return null;
  const [, sign = "", whole = "", decimals = ""] = match;
  if (whole === "" && decimals === "") return null;
  const size = Number(whole.replaceAll(",", "")) * 100 + Number(decimals.padEnd(2, "0"));
  if (!Number.isSafeInteger(size)) return null;
  return sign === "-" && size !== 0 ? -size : size;
}
