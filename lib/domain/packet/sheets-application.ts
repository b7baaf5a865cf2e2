import {
  APPLICANT_WORDS,
  applicationOf,
  ownersToAuthorize,
} from "../application/application-of.ts";
import {
  METHOD_WORDS,
  type PipeProposal,
  pipeProposals,
  slopeWords,
} from "../application/proposed-pipe.ts";
import { type CutArea, cutAreas, SURFACE_WORDS, totalArea } from "../application/surface-area.ts";
import { plainFeet } from "../length/station.ts";
import { sayWhere } from "../length/stretch.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { streetOf } from "../party/stakeholders.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { composed } from "./sheets-job.ts";

const NONE = "not entered";

function said(text: string): string {
  return text.trim() === "" ? NONE : text.trim();
}

/** Who applies and signed for it, and that each owner lets them. */
export function attestationSheet({ file }: PacketInput): Sheet {
  const application = applicationOf(file, "side-sewer");
  const signedOn = application?.attestedOn ?? null;
  const rows = ownersToAuthorize(file).map(({ property, name, signedOn: on }) => [
    streetOf(property.address),
    name,
    on === null ? "NOT ON FILE" : EN.day(on),
  ]);
  return composed("attestation", "Applicant and owners’ authorization", [
    ...table(
      ["", ""],
      [
        ["Applicant", said(application?.applicant ?? "")],
        ["Signs as", APPLICANT_WORDS[application?.applicantIs ?? "not-set"]],
        ["Signed", signedOn === null ? "not signed yet" : EN.day(signedOn)],
      ],
    ),
    ...(application?.applicantIs === "owner"
      ? []
      : [
          heading("Owners’ authorization of the contractor"),
          ...(rows.length === 0
            ? [paragraph("No owner of a connected property is on file.")]
            : table(["Property", "Owner", "Signed"], rows)),
        ]),
  ]);
}

/** The new pipe, piece of work by piece of work. */
export function proposedPipeSheet({ file }: PacketInput): Sheet {
  const rows = pipeProposals(file).map(pipeRow);
  return composed(
    "proposed-pipe",
    "Proposed pipe",
    rows.length === 0
      ? [paragraph("No new pipe is put in.")]
      : table(
          ["Work", "Pipe", "Length, ft", "Slope", "Method", "Bedding; joint", "Connection"],
          rows,
          { numeric: [2] },
        ),
  );
}

function pipeRow({ item, pipe, length }: PipeProposal): string[] {
  const long = length === null ? NONE : plainFeet(length);
  if (pipe === null) return [item.title, NONE, long, "–", NONE, NONE, NONE];
  return [
    item.title,
    pipeWords(pipe),
    long,
    pipe.slope === null ? "–" : slopeWords(pipe.slope),
    METHOD_WORDS[pipe.method],
    pipe.bedding.trim() === "" && pipe.joint.trim() === ""
      ? NONE
      : `bedding ${said(pipe.bedding)}; joint ${said(pipe.joint)}`,
    said(pipe.connection),
  ];
}

/** `6 in PVC`; which of the two nobody entered is said. */
function pipeWords({
  diameter,
  material,
}: Pick<NonNullable<PipeProposal["pipe"]>, "diameter" | "material">): string {
  if (diameter === null && material === "unknown") return NONE;
  const size = diameter === null ? "size not entered" : `${diameter} in`;
  if (material === "unknown") return `${size}, material not entered`;
  return diameter === null
    ? `${EN.material[material]}, ${size}`
    : `${size} ${EN.material[material]}`;
}

/** Surfaces that are cut with their areas, how they are put back, and how people get by. */
export function pavementSheet({ file, report }: PacketInput): Sheet {
  const areas = cutAreas(file, report.today);
  const application = applicationOf(file, "street-use") ?? applicationOf(file, "side-sewer");
  return composed("pavement", "Pavement, restoration and traffic", [
    ...(areas.length === 0 ? [paragraph("No surface to cut is entered.")] : areaTable(areas)),
    ...list(
      areas.flatMap(({ cut, noCut }) => (noCut === "" ? [] : [`${sayWhere(cut)}: ${noCut}`])),
    ),
    heading("Traffic and people on foot"),
    ...table(
      ["", ""],
      [
        ["Traffic", said(application?.traffic ?? "")],
        ["People on foot", said(application?.pedestrians ?? "")],
      ],
    ),
  ]);
}

function areaTable(areas: readonly CutArea[]): LetterBlock[] {
  const rows = areas.map(({ cut, squareFeet, steps, citation }) => [
    sayWhere(cut),
    SURFACE_WORDS[cut.surface],
    [...steps, ...(citation === "" ? [] : [citation])].join("; "),
    squareFeet === null ? "unknown" : String(squareFeet),
    said(cut.restoration),
  ]);
  const total = totalArea(areas);
  return table(
    ["Where", "Surface", "How it is worked out", "Sq ft", "Restoration"],
    [...rows, ["Total", "", "", total === null ? "unknown" : String(total), ""]],
    { numeric: [3], totals: 1 },
  );
}
