import {
  PDFArray,
  PDFDict,
  type PDFDocument,
  PDFName,
  type PDFObject,
  type PDFPage,
  PDFRef,
  PDFStream,
} from "@cantoo/pdf-lib";
import { ACTIONS, nameOf } from "./pdf-actions.ts";

// A packet goes to an authority under the office's name: of a stranger's PDF only what shows comes
// along. Nothing in it starts a program, opens another file or page, runs a script or carries a file.

/** What a page is made of; everything else about it (actions, threads, private data) is left behind. */
const OF_PAGE = new Set([
  "Type",
  "Parent",
  "Resources",
  "MediaBox",
  "CropBox",
  "BleedBox",
  "TrimBox",
  "ArtBox",
  "Contents",
  "Rotate",
  "Group",
  "UserUnit",
]);

/** Remarks on a page that only show: a stamp, a line, a highlighted word. */
const SHOWN = new Set([
  "FreeText",
  "Line",
  "Square",
  "Circle",
  "Polygon",
  "PolyLine",
  "Highlight",
  "Underline",
  "Squiggly",
  "StrikeOut",
  "Stamp",
  "Caret",
  "Ink",
]);

/** What such a remark is made of. */
const OF_REMARK = new Set([
  "Type",
  "Subtype",
  "Rect",
  "Contents",
  "F",
  "AP",
  "AS",
  "Border",
  "C",
  "CA",
  "QuadPoints",
  "InkList",
  "L",
  "Vertices",
  "BS",
  "BE",
  "IC",
  "LE",
  "DA",
  "Q",
]);

/** Keys that carry an action, a script or a file wherever they stand. */
const CARRIERS = [
  "AA",
  "JS",
  "EF",
  "AF",
  "OpenAction",
  "PieceInfo",
  "Metadata",
  "OPI",
  "Alternates",
];

/** Of a stream: its bytes in another file. */
const ELSEWHERE = ["F", "FFilter", "FDecodeParms"];

/** Leaves of each page only what shows, and of what the pages are made of only what draws. */
export function leaveOnlyWhatShows(pages: readonly PDFPage[]): void {
  const seen = new Set<PDFObject>();
  for (const { node, doc } of pages) {
    const remarks = shownRemarks(node, doc);
    for (const key of node.keys()) if (!OF_PAGE.has(nameOf(key))) node.delete(key);
    if (remarks.length > 0) node.set(PDFName.of("Annots"), doc.context.obj(remarks));
    for (const key of ["Resources", "Contents", "Group", "Annots"])
      clean(node.get(PDFName.of(key)), { doc, seen });
  }
}

function shownRemarks(page: PDFDict, doc: PDFDocument): PDFDict[] {
  const listed = doc.context.lookup(page.get(PDFName.of("Annots")));
  if (!(listed instanceof PDFArray)) return [];
  return listed.asArray().flatMap((entry) => {
    const remark = doc.context.lookup(entry);
    if (!(remark instanceof PDFDict)) return [];
    if (!SHOWN.has(nameOf(remark.get(PDFName.of("Subtype"))))) return [];
    for (const key of remark.keys()) if (!OF_REMARK.has(nameOf(key))) remark.delete(key);
    return [remark];
  });
}

interface Walk {
  readonly doc: PDFDocument;
  readonly seen: Set<PDFObject>;
}

/** Walks everything that can be reached; without recursion, since depth is a stranger's choice. */
function clean(start: PDFObject | undefined, { doc, seen }: Walk): void {
  const open: (PDFObject | undefined)[] = [start];
  while (open.length > 0) {
    const next = open.pop();
    const object = next instanceof PDFRef ? doc.context.lookup(next) : next;
    if (object === undefined || seen.has(object)) continue;
    seen.add(object);
    if (object instanceof PDFArray) open.push(...object.asArray());
    if (object instanceof PDFStream) {
      for (const key of ELSEWHERE) object.dict.delete(PDFName.of(key));
      open.push(object.dict);
    }
    if (object instanceof PDFDict) {
      cleanDict(object);
      open.push(...object.values());
    }
  }
}

function cleanDict(dict: PDFDict): void {
  const isAction = ACTIONS.has(nameOf(dict.get(PDFName.of("S"))));
  const type = nameOf(dict.get(PDFName.of("Type")));
  const isFile = /^(Filespec|F|EmbeddedFile|Action)$/.test(type) || dict.has(PDFName.of("EF"));
  const gone = isAction || isFile ? dict.keys() : CARRIERS.map((key) => PDFName.of(key));
  for (const key of gone) dict.delete(key);
}
