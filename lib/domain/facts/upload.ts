import { instant, oneOf, type RowOf, row, sha256, whole, words } from "./field.ts";
import { STORED_TYPES } from "./stored-type.ts";

/** A stored file; its bytes are kept by hash. */
export type Upload = RowOf<typeof UPLOAD>;

export const UPLOAD = row({
  one: "stored file",
  fields: {
    name: words,
    type: oneOf(STORED_TYPES),
    bytes: whole(Number.MAX_SAFE_INTEGER),
    sha256,
    addedBy: words,
    addedAt: instant,
    note: words,
  },
});
