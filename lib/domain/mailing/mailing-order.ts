import type { Address } from "../facts/party.ts";
import { deliveryLine } from "../party/delivery-line.ts";

/**
 * Sorts as a carrier walks: by ZIP code, then street, then house number as a number, then unit. What
 * has no ZIP code comes last. What is equal keeps its order.
 */
export function inMailingOrder<T>(pieces: readonly T[], addressOf: (piece: T) => Address): T[] {
  return pieces
    .map((piece) => ({ piece, key: orderKey(addressOf(piece)) }))
    .toSorted((one, other) => compareKeys(one.key, other.key))
    .map(({ piece }) => piece);
}

interface OrderKey {
  readonly zip: string;
  readonly street: string;
  readonly number: number;
  readonly behind: string;
}

const LAST_ZIP = "~";

function orderKey({ street, unit, zip }: Address): OrderKey {
  const line = deliveryLine(street, unit);
  const found = placeOf(line.street);
  const digits = zip.replace(/\D/g, "");
  return {
    zip: digits === "" ? LAST_ZIP : digits.slice(0, 5),
    street: found.street,
    number: found.number,
    behind: `${found.more.trim()} ${line.unit}`,
  };
}

/** `12 1/2 FENNEL ROW` is number 12 of Fennel Row, and `PO BOX 40` number 40 of the boxes. */
function placeOf(street: string): { street: string; number: number; more: string } {
  const box = /^(PO BOX|(?:RR|HC) \S+ BOX) (\d+)(.*)$/.exec(street);
  if (box) return { street: box[1] ?? "", number: Number(box[2]), more: box[3] ?? "" };
  const house = /^(\d+)(\S*(?: \d+\/\d+)?) (.+)$/.exec(street);
  if (house) return { street: house[3] ?? "", number: Number(house[1]), more: house[2] ?? "" };
  return { street, number: 0, more: "" };
}

const WORDS = new Intl.Collator("en-US", { numeric: true, sensitivity: "base" });

function compareKeys(one: OrderKey, other: OrderKey): number {
  return (
    compareText(one.zip, other.zip) ||
    WORDS.compare(one.street, other.street) ||
    one.number - other.number ||
    WORDS.compare(one.behind, other.behind)
  );
}

/** By code points: `~` stands behind every digit. */
function compareText(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}
