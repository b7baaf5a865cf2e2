import { name, oneOf, type RowOf, row, usually, words } from "./field.ts";

/** Ways to mend a line. */
export const OPTION_KINDS = [
  "spot-repair",
  "lining",
  "bursting",
  "full-replacement",
  "separate-lines",
  "other",
] as const;
export type OptionKind = (typeof OPTION_KINDS)[number];

/** One way to do the work, priced beside the others; scope items that name none belong to all. */
export type WorkOption = RowOf<typeof WORK_OPTION>;

export const WORK_OPTION = row({
  one: "option",
  most: 30,
  saved: "office",
  fields: {
    title: name("a title"),
    kind: usually(oneOf(OPTION_KINDS), "other"),
    note: words,
  },
});
