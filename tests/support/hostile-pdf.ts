import { PDFDocument, PDFName, PDFString } from "@cantoo/pdf-lib";

/** A form of one page and so many fields that making them part of the page takes minutes. */
export async function manyFields(count: number): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const page = document.addPage([200, 200]);
  const { context } = document;
  const fields = Array.from({ length: count }, (_, at) =>
    context.register(
      context.obj({
        Type: "Annot",
        Subtype: "Widget",
        FT: "Tx",
        T: PDFString.of(`f${at}`),
        V: PDFString.of("x"),
        Rect: [0, 0, 20, 10],
        DA: PDFString.of("/Helv 8 Tf 0 g"),
      }),
    ),
  );
  page.node.set(PDFName.of("Annots"), context.obj(fields));
  document.catalog.set(PDFName.of("AcroForm"), context.obj({ Fields: fields }));
  return await document.save();
}
