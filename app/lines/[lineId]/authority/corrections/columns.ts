import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { roundsOf } from "#lib/domain/permit/corrections.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";

/** The rounds that comments can belong to, the newest first. */
export function roundChoices(file: LineFile): { readonly value: string; readonly label: string }[] {
  const rounds = file.permits.flatMap((permit) =>
    roundsOf(file, permit).map(({ step, number }) => ({
      on: step.on,
      value: step.id,
      label: `Round ${number}, ${formatDate(step.on)}${file.permits.length > 1 ? `, ${permitName(permit)}` : ""}`,
    })),
  );
  return distinct(
    rounds
      .toReversed()
      .toSorted((one, other) => other.on.localeCompare(one.on))
      .map(({ value, label }) => ({ value, label })),
  );
}

/** One comment a row, as the corrections letter lists them, with the answer beside it. */
export function correctionColumns(file: LineFile): GridColumn[] {
  return [
    { key: "number", title: "No.", kind: "text", width: 7, example: "3" },
    { key: "sheet", title: "Sheet", kind: "text", width: 8, example: "C2" },
    {
      key: "comment",
      title: "Comment",
      kind: "text",
      width: 30,
      required: true,
      hint: "In the reviewer’s words",
      example: "Show the depth at the main",
    },
    {
      key: "answer",
      title: "Answer",
      kind: "text",
      width: 28,
      example: "Depth 7.5 ft added at the main",
    },
    {
      key: "notChanged",
      title: "Not changed because",
      kind: "text",
      width: 20,
      hint: "Where it is not changed as asked",
    },
    { key: "changedPages", title: "Changed sheets", kind: "text", width: 10, example: "C2, C3" },
    { key: "answeredBy", title: "Answered by", kind: "text", width: 14, example: "Marek Łódź" },
    { key: "acceptedOn", title: "Accepted", kind: "day", width: 12 },
    {
      key: "stepId",
      title: "Round",
      kind: "choice",
      width: 20,
      required: true,
      choices: roundChoices(file),
    },
  ];
}
