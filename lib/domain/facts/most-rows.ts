import type { Nonsense } from "./nonsense.ts";
import { type ListName, ROW_WORDS } from "./references.ts";

/**
 * How many rows a list of a line takes. One line is a street of houses, not a town: what is longer is
 * a mistake, and everybody would wait for it whenever a page is shown.
 */
const MOST: Partial<Record<ListName, number>> = {
  properties: 200,
  units: 1_000,
  parties: 1_000,
  roles: 1_000,
  points: 200,
  tieIns: 80,
  bends: 100,
  fixedPoints: 200,
  ties: 400,
  planShapes: 400,
  planPictures: 20,
  reconnections: 80,
  records: 12,
  entries: 160,
  runs: 60,
  anchors: 300,
  observations: 2_000,
  scope: 300,
  options: 30,
  changeOrders: 100,
  splits: 200,
  agreements: 50,
  testDays: 200,
  history: 100_000,
};

/** Of every other list. */
const USUAL = 3_000;

/** How many rows a list of a line takes. */
function mostRows(list: ListName): number {
  return MOST[list] ?? USUAL;
}

/** Lists that are longer than a line's can be, at the first row too many. */
export function tooManyRows(file: Readonly<Record<ListName, readonly unknown[]>>): Nonsense[] {
  return (Object.keys(ROW_WORDS) as ListName[]).flatMap((list) => {
    const most = mostRows(list);
    const message = tooManyWords(file[list].length, list);
    return message === null ? [] : [{ list, row: most, path: "", message }];
  });
}

/** Null where so many rows are taken. */
export function tooManyWords(count: number, list: ListName): string | null {
  const most = mostRows(list);
  if (count <= most) return null;
  const number = (value: number) => value.toLocaleString("en-US");
  return `These are ${number(count)} rows, and one line takes at most ${number(most)} of them (${ROW_WORDS[list]}); leave out what does not belong to this line, or make two lines of it`;
}
