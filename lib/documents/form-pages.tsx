import { PDFDocument } from "@cantoo/pdf-lib";
import { renderToBuffer } from "@react-pdf/renderer";
import type { FormFill, FormSet } from "#lib/domain/form/form-fill.ts";
import { attachedSheet } from "#lib/domain/packet/sheets-form.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { readyFonts } from "./fonts.ts";
import { fillFormApart } from "./forms-apart.ts";
import { printable } from "./printable.ts";
import { SheetDocument } from "./sheet-document.tsx";

interface FormPages {
  /** The form, filled in. */
  readonly form: PDFDocument;
  /** What is attached to it; null where nothing is. */
  readonly attached: PDFDocument | null;
  readonly set: readonly FormSet[];
}

interface About {
  readonly lineName: string;
  readonly day: string;
}

/**
 * An authority's form filled in, with the sheet that is attached to it; or why it can't be, in words.
 * For the worker process only.
 */
export async function formPages(
  fill: FormFill,
  {
    bytes,
    about,
    number,
  }: { readonly bytes: Uint8Array; readonly about: About; readonly number: number },
): Promise<Result<FormPages, string>> {
  const filled = await fillFormApart(bytes, fill);
  if (!filled.ok) return filled;
  const form = await PDFDocument.load(filled.value.bytes, { updateMetadata: false });
  const { set } = filled.value;
  const sheet = attachedSheet(fill, set);
  if (sheet === null) return ok({ form, attached: null, set });
  await readyFonts();
  const context = { ...about, number, pictures: new Map() };
  const printed = await renderToBuffer(
    <SheetDocument sheet={printable(sheet, "The attached sheet")} context={context} />,
  );
  return ok({ form, attached: await PDFDocument.load(printed, { updateMetadata: false }), set });
}

/** The form by itself, with what is attached to it behind its own pages; its fields stay fields. */
export async function renderForm(
  fill: FormFill,
  { bytes, about }: { readonly bytes: Uint8Array | undefined; readonly about: About },
): Promise<Result<{ readonly bytes: Uint8Array; readonly set: readonly FormSet[] }, string>> {
  if (bytes === undefined) return err("its PDF is not in the store. Add the form again.");
  const pages = await formPages(fill, { bytes, about, number: 1 });
  if (!pages.ok) return pages;
  const { form, attached, set } = pages.value;
  if (attached !== null)
    for (const page of await form.copyPages(attached, attached.getPageIndices()))
      form.addPage(page);
  return ok({ bytes: await form.save({ updateFieldAppearances: false }), set });
}
