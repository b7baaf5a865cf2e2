import { day, maybe, name, type RowOf, ref, row, words } from "./field.ts";

/** What was carried out, as a named person says or an as-built drawing shows. */
export type BuiltWork = RowOf<typeof BUILT_WORK>;

export const BUILT_WORK = row({
  one: "work done",
  fields: {
    /** The scope item that it was; null: the whole work, as on an as-built drawing. */
    itemId: maybe(ref("scope")),
    /** The day on which it was done. */
    on: day,
    /** Who says so. */
    by: name("who says so"),
    /** What was built, and where it differs from what was priced. */
    words,
    uploadId: maybe(ref("uploads")),
  },
});
