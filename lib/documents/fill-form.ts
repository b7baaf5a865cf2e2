import {
  PDFBool,
  PDFCheckBox,
  PDFDict,
  type PDFDocument,
  PDFDropdown,
  type PDFFont,
  PDFName,
  PDFOptionList,
  PDFRadioGroup,
  PDFTextField,
} from "@cantoo/pdf-lib";
import type { FormSet, FormValue } from "#lib/domain/form/form-fill.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { clean, type Faces, facesOf } from "./form-faces.ts";
import { buttonsOf, type FoundField, fieldsOf, isHidden } from "./form-fields.ts";
import { type Room, settingOf } from "./form-text.ts";
import { openPdf } from "./open-pdf.ts";
import { withoutScripts } from "./plain-form.ts";
import { typeOver } from "./type-over.ts";

export interface FilledForm {
  readonly bytes: Uint8Array;
  /** What did not simply go in. */
  readonly set: readonly FormSet[];
}

/**
 * Fills in a form's fields and types over its boxes. Fields stay fields unless `flatten`; what the form
 * runs by itself is left out. A stranger's file may take any time and memory: called in a process of its
 * own (forms-apart.ts).
 */
export async function fillForm(
  bytes: Uint8Array,
  { values, flatten }: { readonly values: readonly FormValue[]; readonly flatten: boolean },
): Promise<Result<FilledForm, string>> {
  const opened = await openPdf(bytes);
  if (!opened.ok) return opened;
  const document = opened.value;
  const faces = facesOf(document);
  const found = fieldsOf(document);
  const set: FormSet[] = [];
  for (const value of values) {
    if (value.field.placed) set.push(...(await typeOver(document, value, faces)));
    else
      for (const field of found.filter(({ name }) => name === value.field.name))
        set.push(...(await fillField(document, { found: field, value, faces })));
  }
  withoutScripts(document);
  finish(document, flatten);
  try {
    const saved = await document.save({ updateFieldAppearances: false });
    return ok({ bytes: saved, set: oneEach(set) });
  } catch {
    return err("its fields are damaged. Ask the authority for another copy of the form.");
  }
}

/** A field in several places is told of once. */
function oneEach(set: readonly FormSet[]): FormSet[] {
  return [...new Map(set.map((each) => [each.field, each])).values()];
}

interface Filling {
  readonly found: FoundField;
  readonly value: FormValue;
  readonly faces: Faces;
}

async function fillField(document: PDFDocument, filling: Filling): Promise<FormSet[]> {
  const { value } = filling;
  switch (value.kind) {
    case "text":
      return await fillText(document, { ...filling, value });
    case "check":
      return fillCheck(filling.found, value.on);
    case "choice":
      return await fillChoice({ ...filling, value });
  }
}

async function fillText(
  document: PDFDocument,
  { found, value, faces }: Filling & { readonly value: FormValue & { readonly kind: "text" } },
): Promise<FormSet[]> {
  const { field } = found;
  if (!(field instanceof PDFTextField)) return [];
  const ways = value.ways.map(clean);
  const [words = ""] = ways;
  const font = await faces.faceFor(ways.join(""));
  const look = lookOf(document, found);
  const setting = settingOf({
    ways,
    lines: value.field.lines,
    most: field.getMaxLength() ?? null,
    size: look.size,
    font,
    rooms: found.widgets.map(({ widget }) => roomOf(widget)),
  });
  field.acroField.dict.delete(PDFName.of("RV"));
  const appearance = `${look.color} /${font.name} ${setting.size} Tf`;
  field.acroField.setDefaultAppearance(appearance);
  for (const { widget } of found.widgets) widget.setDefaultAppearance(appearance);
  field.setText(setting.text === "" ? undefined : setting.text);
  field.updateAppearances(font);
  listFont(document, font);
  if (setting.continued) return [{ field: found.name, how: "continued", words }];
  return setting.smaller ? [{ field: found.name, how: "smaller", words }] : [];
}

interface Look {
  readonly size: number;
  readonly color: string;
}

const TYPE = /\/[^\s/]+\s+(\d*\.?\d+)\s+Tf/;
const COLOR = /(?:\d*\.?\d+\s+){1,4}(?:g|rg|k)\b/;

/** Type size and color that a form gives to a field: by the place, the field, or the form as a whole. */
function lookOf(document: PDFDocument, { field, widgets }: FoundField): Look {
  const said = [
    widgets[0]?.widget.getDefaultAppearance(),
    field.acroField.getDefaultAppearance(),
    textOf(document.getForm().acroForm.dict),
  ].find((each) => each !== undefined && TYPE.test(each));
  return {
    size: Number(TYPE.exec(said ?? "")?.[1] ?? 0),
    color: COLOR.exec(said ?? "")?.[0] ?? "0 g",
  };
}

function textOf(form: PDFDict): string | undefined {
  const said = form.lookup(PDFName.of("DA"));
  return said !== undefined && "asString" in said && typeof said.asString === "function"
    ? String(said.asString())
    : undefined;
}

function roomOf(widget: FoundField["widgets"][number]["widget"]): Room {
  const { width, height } = widget.getRectangle();
  const turn = widget.getAppearanceCharacteristics()?.getRotation() ?? 0;
  const border = (widget.getBorderStyle()?.getWidth() ?? 0) + 1;
  const size = Math.abs(turn) % 180 === 90 ? { width: height, height: width } : { width, height };
  return {
    width: Math.max(0, size.width - 2 * border),
    height: Math.max(0, size.height - 2 * border),
  };
}

/** So that a reader who changes a field finds the typeface again. */
function listFont(document: PDFDocument, font: PDFFont): void {
  const { dict } = document.getForm().acroForm;
  const resources = dictIn(dict, "DR");
  dictIn(resources, "Font").set(PDFName.of(font.name), font.ref);
}

function dictIn(dict: PDFDict, name: string): PDFDict {
  const known = dict.lookup(PDFName.of(name));
  if (known instanceof PDFDict) return known;
  const made = dict.context.obj({});
  dict.set(PDFName.of(name), made);
  return made;
}

function fillCheck(found: FoundField, on: boolean): FormSet[] {
  const { field } = found;
  if (!(field instanceof PDFCheckBox)) return [];
  if (on) field.check();
  else field.uncheck();
  if (field.needsAppearancesUpdate()) field.updateAppearances();
  return [];
}

async function fillChoice({
  found,
  value,
  faces,
}: Filling & { readonly value: FormValue & { readonly kind: "choice" } }): Promise<FormSet[]> {
  const { field } = found;
  const { option } = value;
  const none: FormSet[] = [{ field: found.name, how: "no-such-option", words: option }];
  if (field instanceof PDFDropdown || field instanceof PDFOptionList) {
    const known = field.acroField
      .getOptions()
      .find(({ display, value: exported }) => (display ?? exported).decodeText() === option);
    if (known === undefined) return none;
    field.select(option);
    field.defaultUpdateAppearances(await faces.faceFor(option));
    // A reader shows what the value stands for; the form's own value is what it is sent as.
    field.acroField.dict.set(PDFName.of("V"), known.value);
    return [];
  }
  if (!(field instanceof PDFCheckBox || field instanceof PDFRadioGroup)) return none;
  const buttons = buttonsOf(found);
  const chosen = buttons.find((each) => each.option === option)?.widget.getOnValue();
  if (chosen === undefined) return none;
  field.acroField.dict.set(PDFName.of("V"), chosen);
  for (const { widget } of buttons)
    widget.setAppearanceState(widget.getOnValue() === chosen ? chosen : PDFName.of("Off"));
  return [];
}

/** Readers show what was set here; fields that nobody sees stay out of sight when all become part of the page. */
function finish(document: PDFDocument, flatten: boolean): void {
  const form = document.getForm();
  form.acroForm.dict.set(PDFName.of("NeedAppearances"), PDFBool.False);
  if (!flatten) return;
  for (const field of form.getFields())
    if (field.acroField.getWidgets().every(isHidden)) form.removeField(field);
  form.flatten();
}
