import {
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFSignature,
  PDFString,
  PDFTextField,
} from "@cantoo/pdf-lib";
import type { FormField, FormLines, FormPage } from "#lib/domain/facts/form.ts";
import { withPrintedLabels } from "#lib/domain/form/printed-label.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { annotationsOf, type FoundField, fieldsOf, kindOf, optionsOf } from "./form-fields.ts";
import { hasXfa, mayBeFilled, openPdf } from "./open-pdf.ts";
import { printedWords } from "./printed-words.ts";
import { shownPlace, shownSize } from "./shown-page.ts";

/** What is on a form. */
export interface ReadForm {
  readonly pages: readonly FormPage[];
  readonly fields: readonly FormField[];
  /** What somebody should know of it, each a sentence. */
  readonly notes: readonly string[];
}

/** No counter's form is longer; a longer file is a handbook. */
const MOST_PAGES = 40;
const MOST_FIELDS = 1_500;

/**
 * The pages and fields of an authority's form, or in words why it can't be filled in here and what to do
 * instead. A stranger's file may take any time and memory: called in a process of its own
 * (forms-apart.ts).
 */
export async function readForm(bytes: Uint8Array): Promise<Result<ReadForm, string>> {
  const opened = await openPdf(bytes);
  if (!opened.ok) return opened;
  const document = opened.value;
  if (!(await mayBeFilled(bytes)))
    return err(
      "its maker has locked it against being filled in. Ask the authority for one that may be filled in, or print it to a new PDF and place boxes on that.",
    );
  const count = document.getPageCount();
  if (count > MOST_PAGES)
    return err(
      `it has ${count.toLocaleString("en-US")} pages, and a form takes at most ${MOST_PAGES}. Save the pages that are filled in as a PDF of their own, and add that.`,
    );
  const xfa = hasXfa(document);
  if (xfa && document.catalog.has(PDFName.of("NeedsRendering"))) return err(ONLY_XFA);
  const found = fieldsOf(document);
  if (xfa && found.length === 0) return err(ONLY_XFA);
  if (found.length > MOST_FIELDS)
    return err(
      `it has ${found.length.toLocaleString("en-US")} fields, and a form takes at most ${MOST_FIELDS.toLocaleString("en-US")}. Print it to a new PDF and place boxes on that.`,
    );
  if (found.some(isSigned))
    return err(
      "it has been signed, and whatever is filled in would break the signature. Get a blank one from the authority.",
    );
  return ok({
    pages: document.getPages().map((page) => {
      const { width, height } = shownSize(page);
      return { width: rounded(width), height: rounded(height) };
    }),
    fields: withPrintedLabels(
      merged(found.flatMap((each) => fieldOf(document, each) ?? [])),
      found.length === 0 ? [] : await printedWords(bytes),
    ),
    notes: notesOn(document, { found, xfa }),
  });
}

const ONLY_XFA =
  "it is a form type that only its own program can display. Open it there, print it to a PDF, and place boxes on that.";

function isSigned({ field }: FoundField): boolean {
  return field instanceof PDFSignature && field.acroField.dict.has(PDFName.of("V"));
}

function fieldOf(document: PDFDocument, found: FoundField): FormField | null {
  const kind = kindOf(found);
  if (kind === null) return null;
  const { field, name, widgets } = found;
  const pages = document.getPages();
  return {
    name,
    kind,
    lines: linesOf(found),
    places: widgets.flatMap(({ widget, page }) => {
      const shown = pages[page];
      if (shown === undefined) return [];
      const place = shownPlace(shown, widget.getRectangle());
      return [{ page: page + 1, ...mapped(place) }];
    }),
    hint: hintOf(found),
    printed: "",
    most: field instanceof PDFTextField ? (field.getMaxLength() ?? null) : null,
    options: kind === "choice" ? optionsOf(found) : [],
    needed: field.isRequired(),
    locked: field.isReadOnly(),
    placed: false,
  };
}

function linesOf({ field }: FoundField): FormLines {
  if (!(field instanceof PDFTextField)) return "one";
  if (field.isCombed() && field.getMaxLength() !== undefined) return "comb";
  return field.isMultiline() ? "many" : "one";
}

function hintOf({ field }: FoundField): string {
  const hint = field.acroField.dict.lookup(PDFName.of("TU"));
  const text = hint instanceof PDFString || hint instanceof PDFHexString ? hint.decodeText() : "";
  return text.replace(/\s+/g, " ").trim().slice(0, 300);
}

/** Fields of one name are one field in several places. */
function merged(fields: readonly FormField[]): FormField[] {
  const byName = new Map<string, FormField>();
  for (const field of fields) {
    const known = byName.get(field.name);
    byName.set(
      field.name,
      known === undefined ? field : { ...known, places: [...known.places, ...field.places] },
    );
  }
  return [...byName.values()];
}

function notesOn(
  document: PDFDocument,
  { found, xfa }: { readonly found: readonly FoundField[]; readonly xfa: boolean },
): string[] {
  const signatures = found.filter((each) => kindOf(each) === "signature").length;
  const notes: readonly (readonly [boolean, string])[] = [
    [
      found.length === 0,
      "It has no fields to fill in. Place boxes on its pages where the answers go.",
    ],
    [
      hasScripts(document, found),
      "It has scripts: they don’t run here and are left out of what is filled in. What it would add up or format by itself has to come from the file or be typed.",
    ],
    [
      xfa,
      "It holds a second copy of its fields for another program. That copy is left out, so that every reader shows what was filled in.",
    ],
    [
      document.catalog.has(PDFName.of("Perms")),
      "It was opened for filling in by one program only. The filled form can be opened by any, without that program’s extra rights.",
    ],
    [
      signatures > 0,
      `It has ${signatures === 1 ? "a place" : `${signatures} places`} for a digital signature; ${signatures === 1 ? "it is" : "they are"} left empty, for who signs.`,
    ],
  ];
  return notes.flatMap(([holds, words]) => (holds ? [words] : []));
}

function hasScripts(document: PDFDocument, found: readonly FoundField[]): boolean {
  const { catalog } = document;
  const names = catalog.lookup(PDFName.of("Names"));
  if (names instanceof PDFDict && names.has(PDFName.of("JavaScript"))) return true;
  if (catalog.has(PDFName.of("AA")) || isScript(catalog.lookup(PDFName.of("OpenAction"))))
    return true;
  if (document.getForm().acroForm.dict.has(PDFName.of("CO"))) return true;
  const dicts = [
    ...found.flatMap(({ field, widgets }) => [
      field.acroField.dict,
      ...widgets.map(({ widget }) => widget.dict),
    ]),
    ...document.getPages().flatMap(({ node }) => [node, ...annotationsOf(document, node)]),
  ];
  return dicts.some((dict) => dict.has(PDFName.of("AA")) || isScript(dict.lookup(PDFName.of("A"))));
}

function isScript(action: unknown): boolean {
  return action instanceof PDFDict && action.has(PDFName.of("JS"));
}

function mapped<T extends Readonly<Record<string, number>>>(numbers: T): T {
  return Object.fromEntries(
    Object.entries(numbers).map(([key, value]) => [key, rounded(value)]),
  ) as T;
}

/** Tenths of a point are finer than any printer. */
function rounded(points: number): number {
  return Math.round(points * 10) / 10;
}
