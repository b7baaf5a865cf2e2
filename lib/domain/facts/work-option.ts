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
export interface WorkOption {
  readonly id: string;
  readonly title: string;
  readonly kind: OptionKind;
  readonly note: string;
}
