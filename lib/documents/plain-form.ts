import { PDFArray, PDFDict, type PDFDocument, PDFName } from "@cantoo/pdf-lib";
import { annotationsOf } from "./form-fields.ts";

/** What a form runs or carries by itself. */
const OF_CATALOG = ["OpenAction", "AA", "Perms", "AF", "Collection"];
const OF_NAMES = ["JavaScript", "EmbeddedFiles", "Renditions"];
const OF_FORM = ["XFA", "CO"];

/**
 * Leaves out of a form what would run, send or open something when it is read: it goes on under the
 * office's name. Its fields and links within it stay.
 */
export function withoutScripts(document: PDFDocument): void {
  const { catalog, context } = document;
  drop(catalog, OF_CATALOG);
  const names = catalog.lookup(PDFName.of("Names"));
  if (names instanceof PDFDict) drop(names, OF_NAMES);
  const { acroForm } = document.getForm();
  drop(acroForm.dict, OF_FORM);
  // Signed-only and append-only are said of a file that was signed; this one is new.
  acroForm.dict.delete(PDFName.of("SigFlags"));
  for (const { node } of document.getPages()) {
    drop(node, ["AA"]);
    for (const dict of annotationsOf(document, node)) dropActions(dict);
  }
  for (const [field] of acroForm.getAllFields()) dropActions(field.dict);
  for (const [ref, object] of context.enumerateIndirectObjects())
    if (object instanceof PDFDict && isScript(object)) context.delete(ref);
}

/** A link to a page or an address stays; whatever else is done on a press goes. */
function dropActions(dict: PDFDict): void {
  drop(dict, ["AA"]);
  const action = dict.lookup(PDFName.of("A"));
  const kind = action instanceof PDFDict ? action.lookup(PDFName.of("S")) : undefined;
  const stays = kind === PDFName.of("GoTo") || kind === PDFName.of("URI");
  if (action !== undefined && (!stays || hasNext(action))) dict.delete(PDFName.of("A"));
}

function hasNext(action: unknown): boolean {
  return action instanceof PDFDict && action.has(PDFName.of("Next"));
}

function isScript(dict: PDFDict): boolean {
  return dict.has(PDFName.of("JS")) && dict.lookup(PDFName.of("S")) === PDFName.of("JavaScript");
}

function drop(dict: PDFDict | PDFArray, keys: readonly string[]): void {
  if (dict instanceof PDFArray) return;
  for (const key of keys) dict.delete(PDFName.of(key));
}
