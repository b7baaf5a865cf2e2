import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { WHITE_LINE_WORDS } from "#lib/domain/clocks/white-line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { PERMIT_KIND_WORDS } from "#lib/domain/permit/state-words.ts";
import { INSPECTION_WORDS, optionsOf, UTILITY_ANSWER_WORDS, UTILITY_KIND_WORDS } from "../terms.ts";

/** The call, and the white-lining before it with its photo. */
export function locateColumns({ uploads }: Pick<LineFile, "uploads">): GridColumn[] {
  return [...CALL_COLUMNS, ...WHITE_LINE_COLUMNS, ...photoColumn(uploads), ...TICKET_NOTE];
}

const CALL_COLUMNS: readonly GridColumn[] = [
  {
    key: "number",
    title: "Ticket",
    kind: "text",
    width: 18,
    required: true,
    example: "26-555-0100",
  },
  { key: "calledOn", title: "Called in", kind: "day", width: 13, required: true },
  { key: "calledAt", title: "Called at", kind: "time", width: 9, hint: "For rules in hours" },
  {
    key: "workBeginsOn",
    title: "Work start",
    pasteHeadings: ["work begins"],
    kind: "day",
    width: 13,
    hint: "As told to the one-call center",
  },
  { key: "workBeginsAt", title: "Start time", kind: "time", width: 9, hint: "For rules in hours" },
];

const WHITE_LINE_COLUMNS: readonly GridColumn[] = [
  {
    key: "whiteLinedOn",
    title: "White-lined",
    kind: "day",
    width: 13,
    hint: "The day the dig area was marked in white, before the call",
  },
  { key: "whiteLinedBy", title: "White-lined by", kind: "text", width: 14, example: "Sami Orlov" },
  {
    key: "whiteLinedHow",
    title: "Marked with",
    kind: "choice",
    width: 14,
    choices: [{ value: "", label: "–" }, ...optionsOf(WHITE_LINE_WORDS)],
  },
];

const TICKET_NOTE: readonly GridColumn[] = [
  { key: "note", title: "Note", kind: "text", width: 24, example: "Gas and water responded" },
];

function photoColumn(uploads: LineFile["uploads"]): GridColumn[] {
  const pictures = uploads.filter(({ type }) => type !== "application/pdf");
  if (pictures.length === 0) return [];
  const choices = distinct(pictures.map(({ id, name }) => ({ value: id, label: name })));
  return [
    {
      key: "whiteLinePhotoId",
      title: "Photo",
      kind: "choice",
      width: 16,
      choices: [{ value: "", label: "–" }, ...choices],
      hint: "Of the white marks; a picture that is on file",
    },
  ];
}

/** What each utility on a ticket answered; only “marked” and “clear” let anyone dig. */
export function utilityColumns({ locateTickets }: Pick<LineFile, "locateTickets">): GridColumn[] {
  return [
    {
      key: "ticketId",
      title: "Ticket",
      kind: "choice",
      width: 16,
      required: true,
      choices: distinct(
        locateTickets.map(({ id, number, calledOn }) => ({
          value: id,
          label: number === "" ? `called in ${calledOn}` : number,
        })),
      ),
    },
    {
      key: "utility",
      title: "Utility",
      kind: "text",
      width: 22,
      required: true,
      example: "Harbor Gas",
    },
    {
      key: "kind",
      title: "Lines",
      kind: "choice",
      width: 13,
      choices: optionsOf(UTILITY_KIND_WORDS),
    },
    {
      key: "answer",
      title: "Response",
      kind: "choice",
      width: 18,
      choices: optionsOf(UTILITY_ANSWER_WORDS),
    },
    { key: "answeredOn", title: "Responded", kind: "day", width: 13 },
    { key: "goodUntil", title: "Marks good until", kind: "day", width: 14, hint: "If it said so" },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}

/** What is kept of an inspection; two permits of one kind and number are told apart. */
export function inspectionColumns({
  permits,
  authority,
}: Pick<LineFile, "permits" | "authority">): GridColumn[] {
  return [
    {
      key: "title",
      title: "Inspection",
      kind: "text",
      width: 24,
      required: true,
      example: "Open trench before bedding",
    },
    {
      key: "permitId",
      title: "Permit",
      kind: "choice",
      width: 22,
      required: true,
      choices: distinct(
        permits.map(({ id, kind, number }) => ({
          value: id,
          label: `${PERMIT_KIND_WORDS[kind]} ${number}`.trim(),
        })),
      ),
    },
    {
      key: "bookedFor",
      title: "Scheduled for",
      pasteHeadings: ["booked for"],
      kind: "day",
      width: 13,
      required: true,
    },
    { key: "bookedAt", title: "At", kind: "time", width: 9 },
    { key: "inspector", title: "Inspector", kind: "text", width: 16 },
    {
      key: "result",
      title: "Result",
      kind: "choice",
      width: 11,
      choices: optionsOf(INSPECTION_WORDS),
    },
    { key: "note", title: "Note", kind: "text", width: 24 },
    {
      key: "kindId",
      title: "Kind",
      kind: "choice",
      width: 18,
      hint: "From the authority’s list",
      choices: [
        { value: "", label: "not on its list" },
        ...distinct(
          (authority?.inspectionKinds ?? []).map(({ id, title }) => ({ value: id, label: title })),
        ),
      ],
    },
    { key: "bookedUntil", title: "Until", kind: "time", width: 9, hint: "End of the window" },
    { key: "startPsi", title: "Start psi", kind: "hundredths", width: 8 },
    { key: "endPsi", title: "End psi", kind: "hundredths", width: 8 },
    { key: "minutes", title: "Minutes", kind: "hundredths", width: 8 },
    { key: "witness", title: "Witness", kind: "text", width: 14 },
    { key: "hours", title: "Hours charged", kind: "hundredths", width: 9 },
  ];
}
