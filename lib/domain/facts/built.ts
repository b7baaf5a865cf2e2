import type { Day } from "../time/day.ts";

/** What was carried out, as a named person says or an as-built drawing shows. */
export interface BuiltWork {
  readonly id: string;
  /** The scope item that it was; null: the whole work, as on an as-built drawing. */
  readonly itemId: string | null;
  /** The day on which it was done. */
  readonly on: Day;
  /** Who says so. */
  readonly by: string;
  /** What was built, and where it differs from what was priced. */
  readonly words: string;
  readonly uploadId: string | null;
}
