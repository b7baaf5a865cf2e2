import type { AuthorityForm, FormField, FormMapping } from "#lib/domain/facts/form.ts";

/** A field of a form with the usual values filled in. */
export function aField(name: string, overrides: Partial<FormField> = {}): FormField {
  return {
    name,
    kind: "text",
    lines: "one",
    places: [{ page: 1, left: 60, top: 60, width: 200, height: 18 }],
    hint: "",
    printed: "",
    most: null,
    options: [],
    needed: false,
    locked: false,
    placed: false,
    ...overrides,
  };
}

/** What goes into a field: the fact of that key, unless told otherwise. */
export function aMapping(
  field: string,
  fact: string,
  overrides: Partial<FormMapping> = {},
): FormMapping {
  return {
    field,
    source: fact === "" ? "typed" : "fact",
    fact,
    row: 0,
    words: "",
    when: [],
    ...overrides,
  };
}

/** A form of an authority, of one page. */
export function aForm(overrides: Partial<AuthorityForm> = {}): AuthorityForm {
  return {
    id: "form-1",
    authorityId: "authority-1",
    version: 1,
    title: "Side sewer application",
    permitKind: "side-sewer",
    requirementId: null,
    fileName: "application.pdf",
    sha256: "a".repeat(64),
    bytes: 1_000,
    pages: [{ width: 612, height: 792 }],
    fields: [],
    notes: [],
    mappings: [],
    days: "mm/dd/yyyy",
    flatten: false,
    retired: false,
    savedBy: "Mara Quill",
    savedAt: "2026-11-25T16:00:00.000Z",
    ...overrides,
  };
}
