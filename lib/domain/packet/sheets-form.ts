import type { AuthorityForm } from "../facts/form.ts";
import { fieldTitle } from "../form/field-title.ts";
import type { FormFill, FormSet } from "../form/form-fill.ts";
import { emptyFields, planForm } from "../form/plan-form.ts";
import { heading, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { isAsked, packetContents } from "./contents.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";

/** The permits that one packet applies for; a street use permit has an application of its own. */
const OF_PACKET: readonly AuthorityForm["permitKind"][] = ["side-sewer", "connection"];

/** The forms that belong to the packet: those of its permits, unless what they meet is not asked for. */
function packetForms(input: PacketInput): AuthorityForm[] {
  return (input.forms ?? []).filter(
    ({ permitKind, requirementId, retired }) =>
      !retired &&
      OF_PACKET.includes(permitKind) &&
      (requirementId === null || isAsked({ id: requirementId }, input)),
  );
}

/** A form filled in from this file. */
export function planOf(form: AuthorityForm, { file, report, office }: PacketInput) {
  const authority = { name: file.authority?.name ?? "" };
  const input = { file, report, office, authority, permitKind: form.permitKind };
  return planForm(form, input, file.formEntries);
}

/** The authority's own forms, filled in: the first thing that a clerk wants to see. */
export function formSheets(input: PacketInput): Sheet[] {
  return packetForms(input).map((form) => ({
    kind: "application",
    title: form.title,
    blocks: [],
    plans: [],
    drawing: null,
    uploadId: null,
    form: planOf(form, input).fill,
  }));
}

/** True where a form of the authority takes the place of our own application sheet. */
export function formIsApplication(input: PacketInput): boolean {
  const requirements = input.file.authority?.requirements ?? [];
  const met = new Set(packetForms(input).map(({ requirementId }) => requirementId));
  const asking = requirements.filter(
    ({ sheet, due }) => sheet === "application" && due === "submission",
  );
  return (
    asking.length > 0 &&
    asking.every(({ id }) => met.has(id)) &&
    packetContents(input).by === "authority"
  );
}

const MOST_NAMED = 6;

/** What is still empty in them, in words for the cover. */
export function formsMissing(input: PacketInput): string[] {
  return packetForms(input).flatMap((form) => {
    const empty = emptyFields(planOf(form, input)).map(({ field }) => fieldTitle(field));
    if (empty.length === 0) return [];
    const named = empty.slice(0, MOST_NAMED).join(", ");
    const more = empty.length > MOST_NAMED ? ` and ${empty.length - MOST_NAMED} more` : "";
    const count = empty.length === 1 ? "1 field is" : `${empty.length} fields are`;
    return [`${form.title}: ${count} empty (${named}${more}).`];
  });
}

/**
 * The sheet that is attached to a form: what the form has no rows for, and in full what did not fit a
 * field. Null where all of it stands on the form.
 */
export function attachedSheet(
  { title, overflow }: Pick<FormFill, "title" | "overflow">,
  set: readonly FormSet[],
): Sheet | null {
  const continued = set.filter(({ how }) => how === "continued");
  const blocks: LetterBlock[] = [
    ...(continued.length === 0
      ? []
      : [
          paragraph("In full, what has no room in its field of the form:"),
          ...table(
            ["Field of the form", "Answer"],
            continued.map(({ field, words }) => [field, words]),
          ),
        ]),
    ...overflow.flatMap((each) => [
      heading(each.title),
      ...table(
        each.columns,
        each.rows.map((row) => [...row]),
      ),
    ]),
  ];
  if (blocks.length === 0) return null;
  return {
    kind: "application",
    title: `${title}: attached sheet`,
    blocks,
    plans: [],
    drawing: null,
    uploadId: null,
  };
}

/** What somebody should know of how a form came out, as sentences; empty where all simply went in. */
export function setWords(set: readonly FormSet[]): string[] {
  const named = (how: FormSet["how"]) =>
    set.flatMap((each) => (each.how === how ? [each.field] : []));
  const say = (names: readonly string[], words: string) =>
    names.length === 0 ? [] : [`${words}: ${names.join(", ")}.`];
  return [
    ...say(named("continued"), "In full on the attached sheet"),
    ...say(named("smaller"), "In small type"),
    ...say(named("no-such-option"), "Nothing selected, since the form does not offer it"),
  ];
}
