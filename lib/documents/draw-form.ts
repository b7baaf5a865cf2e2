import { PDFDocument, StandardFonts } from "@cantoo/pdf-lib";

/** One thing that a drawn form asks. */
interface AskedField {
  /** As it is printed over its field. */
  readonly printed: string;
  readonly name: string;
  /** Whether it shares its row with the one before it. */
  readonly beside: boolean;
}

interface DrawnForm {
  readonly title: string;
  readonly under: string;
  /** The moment that the file says it was made, so that it is the same file whenever it is drawn. */
  readonly madeOn: Date;
  readonly asked: readonly AskedField[];
}

const LEFT = 54;
const RIGHT = 558;
const TOP = 692;
const STEP = 40;
const BETWEEN = 16;

/** A form of one letter-size page with a text field under each question: a stand-in for a counter’s own. */
export async function drawForm({ title, under, madeOn, asked }: DrawnForm): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.setTitle(under);
  document.setCreationDate(madeOn);
  document.setModificationDate(madeOn);
  const font = await document.embedFont(StandardFonts.Helvetica);
  const strong = await document.embedFont(StandardFonts.HelveticaBold);
  const page = document.addPage([612, 792]);
  page.drawText(title, { x: LEFT, y: 740, size: 15, font: strong });
  page.drawText(under, { x: LEFT, y: 722, size: 10, font });
  const form = document.getForm();
  const half = (RIGHT - LEFT - BETWEEN) / 2;
  let row = 0;
  for (const [at, { printed, name, beside }] of asked.entries()) {
    if (!beside) row += 1;
    const x = beside ? LEFT + half + BETWEEN : LEFT;
    const y = TOP - row * STEP;
    const shares = beside || asked[at + 1]?.beside === true;
    page.drawText(printed, { x, y: y + 24, size: 9, font });
    form.createTextField(name).addToPage(page, {
      ...{ x, y, width: shares ? half : RIGHT - LEFT, height: 18, borderWidth: 0.75, font },
    });
  }
  return document.save();
}
