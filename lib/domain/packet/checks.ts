import { type Applies, requirementApplies } from "../application/conditions.ts";
import type { Requirement } from "../facts/authority.ts";
import type { Permit, PermitKind, RequirementMark } from "../facts/permit.ts";
import { kindName, permitSentence } from "../permit/say.ts";
import { isInForce, permitStateOf } from "../permit/steps.ts";
import { paperState } from "./application-states.ts";
import type { PacketCheck } from "./packet.ts";
import type { PacketInput, SheetState } from "./packet-input.ts";
import { sheetState } from "./sheet-states.ts";

/**
 * Each thing that the authority asks for, and how it stands. One whose conditions say for sure that it
 * does not apply is left out; unknown counts as if it applied. The office may say that one does not
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
  const { applies, sentence: why } = requirementApplies(requirement, {
    file: input.file,
    tieIns: input.report.tieIns,
  });
  return {
    requirementId: requirement.id,
    title: requirement.title,
    mandatory: requirement.mandatory,
    due: requirement.due,
    citation: requirement.citation,
    why: applies === "unknown" && mark?.state === "does-not-apply" ? notShown(why) : why,
    ...(applies === "no"
      ? { state: "does-not-apply" as const, sentence: why }
      : standing(requirement, mark ?? null, { found: foundState(requirement, input), applies })),
  };
}

/** What the office's word stands for, where the facts can't tell. */
function notShown(why: string): string {
  return why.replace("Counts as applying until this is known", "Not known from the facts");
}

function foundState({ permitKind, paper, sheet }: Requirement, input: PacketInput): SheetState {
  if (permitKind !== null) return permitState(permitKind, input);
  return paper === null ? sheetState(sheet, input) : paperState(paper, input);
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
  const none = `There is no ${kindName(kind)} in the file.`;
  return { complete: false, sentences: permits.length === 0 ? [none] : permits.map(words) };
}

/** Sheets whose facts outrank what anybody marks. */
const FACTS_DECIDE: readonly Requirement["sheet"][] = ["contractor-standing", "split"];

function standing(
  requirement: Requirement,
  mark: RequirementMark | null,
  { found, applies }: { readonly found: SheetState; readonly applies: Applies["applies"] },
): Pick<PacketCheck, "state" | "sentence"> {
  const sentence = found.sentences.join(" ");
  if (mark?.state === "does-not-apply") return waved(mark, applies, sentence);
  if (mark?.state === "missing") {
    return { state: "missing", sentence: mark.note === "" ? sentence : mark.note };
  }
  if (mark?.state !== "in-hand") {
    return { state: found.complete ? "in-hand" : "missing", sentence };
  }
  const byFacts = FACTS_DECIDE.includes(requirement.sheet) || requirement.paper !== null;
  if (byFacts && !found.complete) {
    return { state: "missing", sentence: `Marked as on file, but: ${sentence}` };
  }
  const file =
    mark.uploadId === null ? "Included (per contractor)." : "Included; the file is attached.";
  return { state: "in-hand", sentence: mark.note === "" ? file : mark.note };
}

/** What the office marked as not applying, unless a condition shows that it does. */
function waved(
  { note }: RequirementMark,
  applies: Applies["applies"],
  sentence: string,
): Pick<PacketCheck, "state" | "sentence"> {
  if (applies === "yes")
    return { state: "missing", sentence: `Marked as not applicable, but it applies. ${sentence}` };
  return { state: "does-not-apply", sentence: note === "" ? "Not applicable." : note };
}
