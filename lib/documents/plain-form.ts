import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFStream,
  PDFString,
} from "@cantoo/pdf-lib";
import { ACTIONS, nameOf } from "./pdf-actions.ts";

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
  for (const [ref, object] of context.enumerateIndirectObjects())
    if (isCarried(object)) context.delete(ref);
    else quieten(object);
}

/** A file within the file. */
function isCarried(object: PDFObject): boolean {
  return object instanceof PDFStream && nameOf(object.dict.get(TYPE)) === "EmbeddedFile";
}

/**
 * Wherever it hangs (a field, a page, a bookmark, a remark), nothing is left that is done by itself or
 * on a press, but links to a page or an address. Without recursion, since depth is a stranger's choice;
 * what is named by reference has its own turn.
 */
function quieten(start: PDFObject): void {
  const open = [start];
  while (open.length > 0) {
    const next = open.pop();
    const object = next instanceof PDFStream ? next.dict : next;
    if (object instanceof PDFArray) open.push(...object.asArray());
    if (!(object instanceof PDFDict)) continue;
    const isDone = ACTIONS.has(nameOf(object.get(PDFName.of("S")))) && !isLink(object);
    if (isDone) for (const key of object.keys()) object.delete(key);
    drop(object, isLink(object) ? ["Next"] : ANYWHERE);
    open.push(...object.values());
  }
}

const TYPE = PDFName.of("Type");

/** What carries a deed, a script or a file wherever it stands. */
const ANYWHERE = ["AA", "JS", "EF", "OnInstantiate"];

/** A link to a page of the form, or to an address on the net. */
function isLink(dict: PDFDict): boolean {
  const kind = nameOf(dict.get(PDFName.of("S")));
  if (kind !== "URI") return kind === "GoTo";
  const to = dict.lookup(PDFName.of("URI"));
  const isText = to instanceof PDFString || to instanceof PDFHexString;
  return isText && /^(https?|mailto):/i.test(to.decodeText().trim());
}

function drop(dict: PDFDict, keys: readonly string[]): void {
  for (const key of keys) dict.delete(PDFName.of(key));
}
