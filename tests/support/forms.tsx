import { degrees, PDFDocument, PDFName, PDFString, StandardFonts } from "@cantoo/pdf-lib";
import {
  Checkbox,
  Document,
  Page,
  renderToBuffer,
  Select,
  Text,
  TextInput,
  View,
} from "@react-pdf/renderer";

// Forms as counters hand them out, each made in another way.

/** By a library that writes fields with all that they can have. */
export async function fullForm(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  const page = document.addPage([612, 792]);
  page.drawText("City of Larkspur Bay · Application for a side sewer permit", {
    x: 54,
    y: 730,
    size: 14,
    font,
  });
  const form = document.getForm();
  const label = (text: string, x: number, y: number) =>
    page.drawText(text, { x, y, size: 9, font });
  label("Applicant", 54, 703);
  form
    .createTextField("Applicant Name")
    .addToPage(page, { x: 150, y: 696, width: 200, height: 18 });
  label("Phone", 360, 703);
  const phone = form.createTextField("Applicant Phone");
  phone.setMaxLength(10);
  phone.enableCombing();
  phone.addToPage(page, { x: 400, y: 696, width: 150, height: 18 });
  label("Describe the work", 54, 670);
  const work = form.createTextField("Work Description");
  work.enableMultiline();
  work.addToPage(page, { x: 150, y: 610, width: 400, height: 60 });
  for (const [at, name] of ["Repair", "Replace", "Line"].entries()) {
    label(name, 172 + at * 100, 585);
    form
      .createCheckBox(`Work ${name}`)
      .addToPage(page, { x: 150 + at * 100, y: 580, width: 14, height: 14 });
  }
  label("Owner is", 54, 560);
  const who = form.createRadioGroup("Applicant Is");
  who.addOptionToPage("Owner", page, { x: 150, y: 555, width: 14, height: 14 });
  who.addOptionToPage("Contractor", page, { x: 250, y: 555, width: 14, height: 14 });
  label("Pipe", 54, 535);
  const pipe = form.createDropdown("Pipe Material");
  pipe.addOptions(["Vitrified clay", "PVC", "Cast iron"]);
  pipe.addToPage(page, { x: 150, y: 530, width: 200, height: 18 });
  for (const row of [1, 2]) {
    label(`Owner ${row}`, 54, 505 - row * 24);
    form
      .createTextField(`Owner ${row} Name`)
      .addToPage(page, { x: 150, y: 500 - row * 24, width: 180, height: 18 });
    form
      .createTextField(`Parcel ${row}`)
      .addToPage(page, { x: 340, y: 500 - row * 24, width: 90, height: 18 });
  }
  const number = form.createTextField("Permit No");
  number.addToPage(page, { x: 400, y: 60, width: 150, height: 18 });
  number.acroField.dict.set(PDFName.of("TU"), PDFString.of("For office use only"));
  const place = document.addPage([612, 792]);
  place.drawText("Second page", { x: 54, y: 730, size: 12, font });
  const date = form.createTextField("Date");
  date.enableRequired();
  date.addToPage(place, { x: 150, y: 690, width: 120, height: 18 });
  return await document.save();
}

/** By the library that makes our letters, which has another way with fields. */
export async function plainerForm(): Promise<Uint8Array> {
  return await renderToBuffer(
    <Document>
      <Page size="LETTER" style={{ padding: 54, fontSize: 11 }}>
        <Text>County street use application</Text>
        <View style={{ marginTop: 20 }}>
          <TextInput name="siteAddress" style={{ height: 20, width: 300 }} />
          <Checkbox
            name="inStreet"
            checked={false}
            style={{ height: 16, width: 16, marginTop: 12 }}
          />
          <Select
            noSpell
            edit={false}
            name="surface"
            select={["", "Asphalt", "Concrete"]}
            value=""
            style={{ height: 20, width: 140, marginTop: 12 }}
          />
        </View>
      </Page>
    </Document>,
  );
}

/** Typed by hand: a file of version 1.4, as old programs left them. The parts are objects from 1. */
function rawPdf(objects: readonly string[], root = 1): Uint8Array {
  let text = "%PDF-1.4\n";
  const at: number[] = [];
  for (const [index, body] of objects.entries()) {
    at.push(text.length);
    text += `${index + 1} 0 obj\n${body}\nendobj\n`;
  }
  const start = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n`;
  for (const each of at) text += `${String(each).padStart(10, "0")} 00000 n \n`;
  text += `trailer\n<< /Size ${objects.length + 1} /Root ${root} 0 R >>\nstartxref\n${start}\n%%EOF\n`;
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0));
}

const CONTENT = "BT /F1 12 Tf 60 720 Td (District sewer form 7) Tj ET";

/**
 * A form with a field within a field, a type that only the form as a whole names, check boxes of one
 * name with two meanings and no look of their own, and a field that the form's own list forgot.
 */
export function oldForm(extra = ""): Uint8Array {
  return rawPdf([
    `<< /Type /Catalog /Pages 2 0 R /AcroForm << /Fields [6 0 R 8 0 R] /DA (/Helv 0 Tf 0 g) /DR << /Font << /Helv 5 0 R >> >> /NeedAppearances true >> ${extra} >>`,
    "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
    "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Resources << /Font << /F1 5 0 R >> >> /Contents 4 0 R /Annots [7 0 R 9 0 R 10 0 R 11 0 R] >>",
    `<< /Length ${CONTENT.length} >>\nstream\n${CONTENT}\nendstream`,
    "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>",
    "<< /T (owner) /FT /Tx /Kids [7 0 R] >>",
    "<< /Type /Annot /Subtype /Widget /Parent 6 0 R /T (name) /Rect [60 650 260 668] /F 4 >>",
    "<< /T (tap) /FT /Btn /Kids [9 0 R 10 0 R] /V /Off >>",
    `<< /Type /Annot /Subtype /Widget /Parent 8 0 R /Rect [60 600 74 614] /F 4 /AS /Off /AP << /N << /New ${form(14)} >> >> >>`,
    `<< /Type /Annot /Subtype /Widget /Parent 8 0 R /Rect [160 600 174 614] /F 4 /AS /Off /AP << /N << /Existing ${form(14)} >> >> >>`,
    "<< /Type /Annot /Subtype /Widget /FT /Tx /T (parcel) /Rect [60 560 160 578] /F 4 /MaxLen 8 >>",
    "<< /Type /XObject /Subtype /Form /BBox [0 0 14 14] /Length 26 >>\nstream\n2 2 m 12 12 l 2 12 m 12 2 l S\nendstream",
  ]);
}

function form(_size: number): string {
  return "12 0 R";
}

/** Scanned pages: nothing to fill in; the second lies on its side and shows a part of itself. */
export async function scannedForm(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.TimesRoman);
  const page = document.addPage([612, 792]);
  page.drawText("Name: ______________________   Repair [  ]", { x: 60, y: 700, size: 12, font });
  const turned = document.addPage([792, 700]);
  turned.setRotation(degrees(90));
  turned.setCropBox(40, 30, 700, 600);
  turned.drawText("Sketch", { x: 100, y: 100, size: 12, font });
  return await document.save();
}
