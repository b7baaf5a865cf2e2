import type { Requirement } from "../facts/authority.ts";
import type { Permit, PermitKind, RequirementMark } from "../facts/permit.ts";
import { isInForce, KIND_NAMES, permitSentence, permitStateOf } from "../permit/steps.ts";
import type { PacketCheck } from "./packet.ts";
import { type PacketInput, type SheetState, sheetState } from "./sheet-states.ts";

/**
 * Each thing that the authority asks for, and how it stands. The office may say that one does not
 * apply, or that one is in hand; but an expired license or a stale split stays missing whatever is
 * said, since those are facts.
 */
export function packetChecks(input: PacketInput): PacketCheck[] {
  const requirements = input.file.authority?.requirements ?? [];
  return requirements.map((requirement) => checkOf(requirement, input));
}

function checkOf(requirement: Requirement, input: PacketInput): PacketCheck {
  const mark = input.file.requirementMarks
    .filter(({ requirementId }) => requirementId === requirement.id)
    .at(-1);
  const found =
    requirement.permitKind === null
      ? sheetState(requirement.sheet, input)
      : permitState(requirement.permitKind, input);
  return {
    requirementId: requirement.id,
    title: requirement.title,
    mandatory: requirement.mandatory,
    due: requirement.due,
    citation: requirement.citation,
    ...standing(requirement, mark ?? null, found),
  };
}

/** A permit of its own is in hand where it is in force, or was and is final. */
function permitState(kind: PermitKind, { file, report }: PacketInput): SheetState {
  const permits = file.permits.filter((permit) => permit.kind === kind);
  const good = permits.find((permit) => {
    const state = permitStateOf(file, permit);
    return isInForce(state) || state === "final";
  });
  const words = (permit: Permit) => `${permitSentence(file, permit, report.today)}.`;
  if (good !== undefined) return { complete: true, sentences: [words(good)] };
  const none = `There is no ${KIND_NAMES[kind]} in the file.`;
  return { complete: false, sentences: permits.length === 0 ? [none] : permits.map(words) };
}

/** Sheets whose facts outrank what anybody marks. */
const FACTS_DECIDE: readonly Requirement["sheet"][] = ["contractor-standing", "split"];

function standing(
  requirement: Requirement,
  mark: RequirementMark | null,
  found: SheetState,
): Pick<PacketCheck, "state" | "sentence"> {
  const sentence = found.sentences.join(" ");
  if (mark?.state === "does-not-apply") {
    return { state: "does-not-apply", sentence: mark.note === "" ? "Not applicable." : mark.note };
  }
  if (mark?.state === "missing") {
    return { state: "missing", sentence: mark.note === "" ? sentence : mark.note };
  }
  if (mark?.state !== "in-hand") {
    return { state: found.complete ? "in-hand" : "missing", sentence };
  }
  if (FACTS_DECIDE.includes(requirement.sheet) && !found.complete) {
    return { state: "missing", sentence: `Marked as on file, but: ${sentence}` };
  }
  const file =
    mark.uploadId === null ? "Included (per contractor)." : "Included; the file is attached.";
  return { state: "in-hand", sentence: mark.note === "" ? file : mark.note };
}
