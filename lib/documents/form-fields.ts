import {
  PDFArray,
  PDFButton,
  PDFCheckBox,
  PDFDict,
  type PDFDocument,
  PDFDropdown,
  type PDFField,
  PDFName,
  PDFOptionList,
  PDFRadioGroup,
  PDFRef,
  PDFSignature,
  PDFTextField,
  type PDFWidgetAnnotation,
} from "@cantoo/pdf-lib";

// A form's fields as they stand in a PDF, whoever made it. Both reading a form and filling one in go by
// these, so that a field that was mapped is the field that is filled in.

/** A place of a field on a page. */
interface Widget {
  readonly widget: PDFWidgetAnnotation;
  /** From 0. */
  readonly page: number;
}

export interface FoundField {
  readonly name: string;
  readonly field: PDFField;
  readonly widgets: readonly Widget[];
}

const HIDDEN = 1 << 1;
const NO_VIEW = 1 << 5;

/** Every field with a place that shows on a page, in the order of the form. */
export function fieldsOf(document: PDFDocument): FoundField[] {
  listStrays(document);
  const pages = pagesByWidget(document);
  return document
    .getForm()
    .getFields()
    .flatMap((field) => {
      if (field instanceof PDFButton) return [];
      const widgets = field.acroField.getWidgets().flatMap((widget): Widget[] => {
        const page = pages.get(widget.dict);
        return page === undefined || isHidden(widget) ? [] : [{ widget, page }];
      });
      return widgets.length === 0 ? [] : [{ name: field.getName(), field, widgets }];
    });
}

export function isHidden(widget: PDFWidgetAnnotation): boolean {
  return (widget.getFlags() & (HIDDEN | NO_VIEW)) !== 0;
}

function pagesByWidget(document: PDFDocument): Map<PDFDict, number> {
  const found = new Map<PDFDict, number>();
  for (const [page, { node }] of document.getPages().entries())
    for (const dict of annotationsOf(document, node)) found.set(dict, page);
  return found;
}

export function annotationsOf(document: PDFDocument, page: PDFDict): PDFDict[] {
  const listed = document.context.lookup(page.get(PDFName.of("Annots")));
  if (!(listed instanceof PDFArray)) return [];
  return listed.asArray().flatMap((entry) => {
    const dict = document.context.lookup(entry);
    return dict instanceof PDFDict ? [dict] : [];
  });
}

/** Fields that stand on a page and that the form's own list forgot: some programs leave it empty. */
function listStrays(document: PDFDocument): void {
  const { acroForm } = document.getForm();
  const listed = new Set(acroForm.getAllFields().map(([{ dict }]) => dict));
  const fields = acroForm.dict.lookup(PDFName.of("Fields"));
  if (!(fields instanceof PDFArray)) return;
  for (const { node } of document.getPages()) {
    for (const dict of annotationsOf(document, node)) {
      if (dict.get(PDFName.of("Subtype")) !== PDFName.of("Widget")) continue;
      const root = rootOf(document, dict);
      const ref = document.context.getObjectRef(root);
      if (ref === undefined || listed.has(root) || listed.has(dict)) continue;
      if (!root.has(PDFName.of("T"))) continue;
      listed.add(root);
      fields.push(ref);
    }
  }
}

/** The field at the top of a field; a ring of parents ends where it began. */
function rootOf(document: PDFDocument, dict: PDFDict): PDFDict {
  const seen = new Set<PDFDict>();
  let at = dict;
  for (;;) {
    seen.add(at);
    const parent = at.get(PDFName.of("Parent"));
    const next = parent instanceof PDFRef ? document.context.lookup(parent) : parent;
    if (!(next instanceof PDFDict) || seen.has(next)) return at;
    at = next;
  }
}

export type FoundKind = "text" | "check" | "choice" | "signature";

/** What a field takes. Check boxes of one name with several meanings are a choice among them. */
export function kindOf({ field, widgets }: FoundField): FoundKind | null {
  if (field instanceof PDFTextField) return "text";
  if (field instanceof PDFCheckBox)
    return new Set(widgets.map(({ widget }) => onValue(widget))).size > 1 ? "choice" : "check";
  if (field instanceof PDFRadioGroup || field instanceof PDFDropdown) return "choice";
  if (field instanceof PDFOptionList) return "choice";
  if (field instanceof PDFSignature) return "signature";
  return null;
}

/** What can be selected in a field, as the form shows it. */
export function optionsOf(found: FoundField): string[] {
  const { field } = found;
  if (field instanceof PDFDropdown || field instanceof PDFOptionList)
    return [
      ...new Set(
        field.acroField.getOptions().map(({ display, value }) => (display ?? value).decodeText()),
      ),
    ];
  return [...new Set(buttonsOf(found).map(({ option }) => option))];
}

/** The buttons of a choice or check box, each with what it stands for. */
export function buttonsOf({
  field,
}: FoundField): { widget: PDFWidgetAnnotation; option: string }[] {
  if (!(field instanceof PDFCheckBox || field instanceof PDFRadioGroup)) return [];
  const exported = field.acroField.getExportValues();
  return field.acroField.getWidgets().map((widget, at) => ({
    widget,
    option: exported?.[at]?.decodeText() ?? onValue(widget),
  }));
}

/** The name of a button's state when it is on. */
function onValue(widget: PDFWidgetAnnotation): string {
  return widget.getOnValue()?.decodeText() ?? "Yes";
}
