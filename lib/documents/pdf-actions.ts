import { PDFName, type PDFObject } from "@cantoo/pdf-lib";

/** Kinds of action (ISO 32000-2, table 201, as it is remembered), whatever they do. */
export const ACTIONS = new Set([
  "GoTo",
  "GoToR",
  "GoToE",
  "GoToDp",
  "Launch",
  "Thread",
  "URI",
  "Sound",
  "Movie",
  "Hide",
  "Named",
  "SubmitForm",
  "ResetForm",
  "ImportData",
  "SetOCGState",
  "Rendition",
  "Trans",
  "GoTo3DView",
  "JavaScript",
  "RichMediaExecute",
]);

/** What a name says; empty where it is none. */
export function nameOf(name: PDFObject | undefined): string {
  return name instanceof PDFName ? name.decodeText() : "";
}
