import { PDFDict, PDFDocument, PDFName, PDFNumber } from "@cantoo/pdf-lib";
import { err, ok, type Result } from "#lib/result.ts";

/** As it is, without a word to the console on what the library would leave out. */
const LOADED = { updateMetadata: false, preserveXFA: true } as const;

const DAMAGED = "it is damaged or incomplete. Download it again, and add that.";

/** A PDF that opens whole without a password; else why not, in words, with what to do. */
export async function openPdf(bytes: Uint8Array): Promise<Result<PDFDocument, string>> {
  if (!endsWell(bytes)) return err(DAMAGED);
  try {
    const document = await PDFDocument.load(bytes, LOADED);
    return document.getPageCount() > 0 ? ok(document) : err(DAMAGED);
  } catch (cause) {
    if (isEncrypted(cause)) return await openLocked(bytes);
    return err(DAMAGED);
  }
}

/** A file that was cut off may still open, with pages lost: its end mark must be there. */
function endsWell(bytes: Uint8Array): boolean {
  return new TextDecoder("latin1").decode(bytes.subarray(-2_048)).includes("%%EOF");
}

/** An owner's password restricts printing but opens without one; a user's password does not. */
async function openLocked(bytes: Uint8Array): Promise<Result<PDFDocument, string>> {
  try {
    const document = await PDFDocument.load(bytes, { ...LOADED, password: "" });
    return document.getPageCount() > 0 ? ok(document) : err(DAMAGED);
  } catch {
    return err(
      "it is locked with a password. Open it with the password, print it to a new PDF, and add that.",
    );
  }
}

function isEncrypted(cause: unknown): boolean {
  return cause instanceof Error && /encrypt|password/i.test(cause.message);
}

/** Whether its pages are made by a second kind of form, beside or in place of what it shows by itself. */
export function hasXfa(document: PDFDocument): boolean {
  return document.getForm().acroForm.dict.has(PDFName.of("XFA"));
}

/** Bits of the permissions (ISO 32000-1, table 22): to add remarks and fill in, or to fill in only. */
const MAY_REMARK = 1 << 5;
const MAY_FILL = 1 << 8;

/** Whether whoever made a protected PDF lets others fill in its fields; an open one always does. */
export async function mayBeFilled(bytes: Uint8Array): Promise<boolean> {
  const { context } = await PDFDocument.load(bytes, { ...LOADED, ignoreEncryption: true });
  const lock = context.lookup(context.trailerInfo.Encrypt);
  if (!(lock instanceof PDFDict)) return true;
  const permissions = lock.lookup(PDFName.of("P"));
  if (!(permissions instanceof PDFNumber)) return true;
  return (permissions.asNumber() & (MAY_REMARK | MAY_FILL)) !== 0;
}
