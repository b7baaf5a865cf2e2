import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import type { PermitState } from "../permit/permit.ts";
import { type RequirementFinding, requirementsOn } from "../permit/requirements.ts";
import { moverOf, permitSentence, permitStateOf } from "../permit/steps.ts";
import { sayList } from "../split/say-list.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";
import { forCount, sayCount, sayParts } from "./say.ts";

/** `9 of 12 things in hand; easement not recorded`. */
export function authorityAnswer(file: LineFile, report: Report): Reply {
  if (file.authority === null)
    return replyWith("No authority is chosen yet", [
      { closes: "Choose the authority whose rules apply here", pressing: PRESSING.stalls },
    ]);
  const findings = requirementsOn(file, report).filter(({ state }) => state !== "does-not-apply");
  const permits = file.permits.map((permit) => permitSentence(file, permit, report.today));
  const sentence = sayParts([
    handWords(findings),
    ...easementWords(report),
    ...permits.map(lowerFirst),
  ]);
  return replyWith(sentence, openings(file, report, findings));
}

function handWords(findings: readonly RequirementFinding[]): string {
  if (findings.length === 0) return "nothing entered that it asks for";
  const inHand = findings.filter(({ state }) => state === "in-hand").length;
  const all = findings.length;
  if (inHand === all) return `all ${sayCount(all, "thing")} in hand`;
  return `${inHand} of ${sayCount(all, "thing")} in hand`;
}

function easementWords({ holds }: Report): string[] {
  const open = holds.filter(({ cause, waiver }) => cause === "easement-missing" && waiver === null);
  if (open.length === 0) return [];
  return [`${forCount(open.length, "easement", `${open.length} easements`)} not recorded`];
}

/** How much it presses that a permit waits for the office. */
const OFFICE_MUST: Partial<Record<PermitState, string>> = {
  drafting: "Put the packet together and submit it",
  "waiting-on-signatures": "Get the signatures and recordings that the application waits for",
  "returned-incomplete": "Complete the application and submit it again",
  corrections: "Answer the corrections",
  "approved-fees-due": "Pay the fees, so that the permit is issued",
  "passed-may-backfill": "Backfill and submit the as-built",
  "as-built-rejected": "Mend the as-built and submit it again",
  expired: "Have the permit extended, or apply again",
};

function openings(
  file: LineFile,
  report: Report,
  findings: readonly RequirementFinding[],
): Opening[] {
  const missing = findings.filter(
    ({ state, requirement }) => state === "missing" && requirement.mandatory,
  );
  const open = file.permits.flatMap((permit): Opening[] => {
    const state = permitStateOf(file, permit);
    const closes = OFFICE_MUST[state];
    if (closes === undefined || moverOf(state) !== "office") return [];
    return [{ closes, pressing: state === "drafting" ? PRESSING.someTime : PRESSING.soon }];
  });
  if (missing.length > 0) {
    const titles = sayList(
      missing.map(({ requirement }) => lowerFirst(requirement.title)),
      4,
    );
    open.push({ closes: `Still wanted: ${titles}`, pressing: PRESSING.ordinary });
  }
  const stopped = report.holds.filter(
    ({ waiver, stops }) => waiver === null && stops.includes("submission"),
  );
  if (stopped.length > 0)
    open.push({
      closes: `Nothing can be submitted while ${sayCount(stopped.length, "hold")} ${forCount(stopped.length, "stands", "stand")}: ${sayList(stopped.map(({ subjectLabel }) => subjectLabel))}`,
      pressing: PRESSING.stalls,
    });
  if (file.permits.length === 0 && open.length === 0)
    open.push({ closes: "Enter the permit once it is applied for", pressing: PRESSING.someTime });
  return open;
}

function lowerFirst(text: string): string {
  const [first = "", second = ""] = text;
  const isName = second !== second.toLowerCase();
  return isName ? text : `${first.toLowerCase()}${text.slice(first.length)}`;
}
