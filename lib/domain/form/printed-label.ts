import type { FormField, FormPlace } from "../facts/form.ts";

/** Words as they stand on a form’s page, in points from the upper left of the page as shown. */
export interface PrintedWords extends FormPlace {
  readonly text: string;
}

/** Words that stand farther apart than this, in points, say different things. */
const APART = 12;
/** A label stands no farther from its field than this. */
const BESIDE = 140;
const ABOVE = 16;
/** What touches a field may reach into it by so much. */
const SLACK = 4;
const LONGEST = 120;

const right = ({ left, width }: FormPlace) => left + width;
const bottom = ({ top, height }: FormPlace) => top + height;

/**
 * What is printed beside each field, by its first place: after a check box; before a field on its row, or
 * above it where nothing is; empty where no words are near. Words beyond another field are that one’s.
 */
export function withPrintedLabels(
  fields: readonly FormField[],
  printed: readonly PrintedWords[],
): FormField[] {
  const places = fields.flatMap((field) => field.places);
  return fields.map((field) => {
    const [place] = field.places;
    return place === undefined
      ? field
      : { ...field, printed: labelOf(place, { kind: field.kind, places, printed }) };
  });
}

interface Page {
  readonly kind: FormField["kind"];
  readonly places: readonly FormPlace[];
  readonly printed: readonly PrintedWords[];
}

function labelOf(place: FormPlace, page: Page): string {
  const before = () => rowLabel(place, page, "before");
  const above = () => labelAbove(place, page);
  const ways =
    page.kind === "check" ? [() => rowLabel(place, page, "after"), before, above] : [before, above];
  for (const way of ways) {
    const label = tidy(way());
    if (label !== "") return label;
  }
  return "";
}

/** The words on the field’s row that come next before or after it. */
function rowLabel(
  place: FormPlace,
  { places, printed }: Page,
  side: "before" | "after",
): PrintedWords[] {
  const isBefore = side === "before";
  const gap = (from: FormPlace, to: FormPlace) =>
    isBefore ? from.left - right(to) : to.left - right(from);
  const onRow = (each: FormPlace) => {
    const middle = each.top + each.height / 2;
    return (
      each.page === place.page && middle >= place.top - SLACK && middle <= bottom(place) + SLACK
    );
  };
  const next = Math.min(
    ...places
      .filter((each) => each !== place && onRow(each) && gap(place, each) >= -SLACK)
      .map((each) => gap(place, each)),
  );
  const words = printed
    .filter((each) => onRow(each) && gap(place, each) >= -SLACK && gap(place, each) < next)
    .toSorted((one, other) => gap(place, one) - gap(place, other));
  const label: PrintedWords[] = [];
  for (const each of words) {
    const last = label.at(-1);
    if (last === undefined ? gap(place, each) > BESIDE : gap(last, each) > APART) break;
    label.push(each);
  }
  return isBefore ? label.reverse() : label;
}

/** The words right above the field’s beginning, on one row. */
function labelAbove(place: FormPlace, { printed }: Page): PrintedWords[] {
  const over = printed.filter(
    (each) =>
      each.page === place.page &&
      bottom(each) <= place.top + SLACK &&
      place.top - bottom(each) <= ABOVE &&
      right(each) > place.left &&
      each.left < right(place),
  );
  const lowest = Math.max(...over.map(bottom));
  const row = over
    .filter((each) => lowest - bottom(each) <= SLACK)
    .toSorted((one, other) => one.left - other.left);
  const end = row.findIndex((each, at) => {
    const last = row[at - 1];
    return last !== undefined && each.left - right(last) > APART;
  });
  return end === -1 ? row : row.slice(0, end);
}

function tidy(words: readonly PrintedWords[]): string {
  const text = words
    .map((each) => each.text)
    .join(" ")
    .replace(/\s+/g, " ")
    .replace(/[\s:_.…]+$/, "")
    .trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1).trimEnd()}…` : text;
}
