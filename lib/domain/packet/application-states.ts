import { applicationOf, attestationWants } from "../application/application-of.ts";
import { pipeProposals } from "../application/proposed-pipe.ts";
import { cutAreas } from "../application/surface-area.ts";
import { somethingDug } from "../application/work-conditions.ts";
import { insuranceStanding, paperStanding } from "../clocks/contractor-standing.ts";
import { endOfWork } from "../clocks/work-end.ts";
import type { ContractorPaper } from "../facts/authority.ts";
import { sayWhere } from "../length/stretch.ts";
import { sayList } from "../say/say-list.ts";
import type { PacketInput, SheetState } from "./packet-input.ts";

function wanting(missing: readonly string[], complete: string): SheetState {
  return missing.length === 0
    ? { complete: true, sentences: [complete] }
    : { complete: false, sentences: missing };
}

/** Who applies, that they signed, and that every owner lets them. */
export function attestationState({ file }: PacketInput): SheetState {
  return wanting(
    attestationWants(file),
    "The applicant signed, and every owner’s authorization is on file.",
  );
}

/** The pipe that each piece of work puts in, whole. */
export function proposedPipeState({ file }: PacketInput): SheetState {
  const proposals = pipeProposals(file);
  if (file.scope.length === 0) return wanting(["No work is priced yet."], "");
  return wanting(
    proposals
      .filter(({ lacks }) => lacks.length > 0)
      .map(({ item, lacks }) => `“${item.title}”: ${sayList(lacks)} not entered.`),
    proposals.length === 0
      ? "No new pipe is put in."
      : "The new pipe is described for every piece of work.",
  );
}

/** Surfaces with their areas, and how traffic and people on foot get by. */
export function pavementState({ file, report }: PacketInput): SheetState {
  const areas = cutAreas(file, report.today);
  const application = applicationOf(file, "street-use") ?? applicationOf(file, "side-sewer");
  const dug = somethingDug({ file, tieIns: report.tieIns });
  if (dug.answer === "no" && areas.length === 0) return wanting([], "Nothing is dug.");
  return wanting(
    [
      ...(areas.length === 0 ? ["No surface to cut is entered."] : []),
      ...areas
        .filter(({ lacks }) => lacks.length > 0)
        .map(({ cut, lacks }) => `Surface cut ${sayWhere(cut)}: ${sayList(lacks)} not entered.`),
      ...areas.flatMap(({ cut, noCut }) =>
        noCut === "" ? [] : [`Surface cut ${sayWhere(cut)}: ${noCut}`],
      ),
      ...((application?.traffic ?? "").trim() === ""
        ? ["How traffic gets past the work is not entered."]
        : []),
      ...((application?.pedestrians ?? "").trim() === ""
        ? ["How people on foot get past the work is not entered."]
        : []),
    ],
    "Surfaces, traffic and people on foot are described.",
  );
}

/** One paper of the contractor, in force to the end of the work. */
export function paperState(paper: ContractorPaper, input: PacketInput): SheetState {
  const { file, office, report } = input;
  const days = { today: report.today, end: endOfWork(file) };
  if (paper === "additional-insured") {
    const { insuredAs = "", certificateId = null } = applicationOf(file, "side-sewer") ?? {};
    const insurance = insuranceStanding(office, days);
    return wanting(
      [
        ...(insuredAs.trim() === ""
          ? ["The certificate’s words that name the additional insured are not entered."]
          : []),
        ...(certificateId === null ? ["The certificate of insurance is not on file."] : []),
        ...(insurance.state === "in-force" ? [] : [insurance.sentence]),
      ],
      `Additional insured: ${insuredAs}. ${insurance.sentence}`,
    );
  }
  const { state, sentence } = paperStanding(paper, office, days);
  return { complete: state === "in-force", sentences: [sentence] };
}
