import { signedStanding } from "../consent/standing.ts";
import type { Signature } from "../facts/signature.ts";
import { certificateOf } from "../paper/certificate.ts";
import { heading, paragraph, pictures, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { askedWithApplication, packetContents } from "./contents.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { CONSENT_STANDING_WORDS } from "./sheets-people.ts";

interface Enclosed {
  readonly uploadId: string | null;
  readonly title: string;
}

/**
 * The stored files that belong into the packet, each once: what was added for a requirement; signed
 * consents, permit records and proofs of delivery where the sheets that tell of them are asked for, and
 * what somebody signed to pay only where who pays what is. Before a document that was signed on screen stand
 * its signatures: the document itself bears none.
 */
export function uploadSheets(input: PacketInput): Sheet[] {
  const { file } = input;
  const requirement = (id: string) =>
    file.authority?.requirements.find((each) => each.id === id)?.title ?? "Enclosure";
  const party = (id: string | undefined) =>
    file.parties.find((each) => each.id === id)?.name ?? "unknown";
  const notice = (id: string) => file.notices.find((each) => each.id === id);
  const { kinds } = packetContents(input);
  const asked = new Set(askedWithApplication(input).map(({ id }) => id));
  const enclosed: Enclosed[] = [
    ...file.requirementMarks
      .filter(({ state, requirementId }) => state !== "does-not-apply" && asked.has(requirementId))
      .map(({ uploadId, requirementId }) => ({ uploadId, title: requirement(requirementId) })),
    ...file.consents
      .filter(({ kind }) => kinds.has("consents") && (kind !== "pay" || kinds.has("split")))
      .map(({ uploadId, partyId }) => ({ uploadId, title: `Signed by ${party(partyId)}` })),
    ...(kinds.has("schedule-of-connections") ? file.records : []).map(
      ({ uploadId, title, number }) => ({
        uploadId,
        title: number === "" ? title : `${title} ${number}`,
      }),
    ),
    ...(kinds.has("proof-of-notice") ? file.deliveries : []).map(({ proofUploadId, noticeId }) => ({
      uploadId: proofUploadId,
      title: `Proof of delivery to ${party(notice(noticeId)?.partyId)}`,
    })),
  ];
  const seen = new Set<string>();
  return enclosed.flatMap(({ uploadId, title }) => {
    const upload = file.uploads.find(({ id }) => id === uploadId);
    if (!upload || seen.has(upload.id)) return [];
    seen.add(upload.id);
    const signatures = file.signatures.filter(({ documentId }) => documentId === upload.id);
    const plain = { kind: "upload" as const, plans: [], drawing: null };
    const document = { ...plain, title: `${title} (${upload.name})`, blocks: [] };
    if (signatures.length === 0) return [{ ...document, uploadId: upload.id }];
    const many = signatures.length === 1 ? "signature" : "signatures";
    return [
      {
        ...plain,
        title: `${title}: ${many} on the document that follows`,
        blocks: signatures.flatMap((signature) => signatureBlocks(input, signature)),
        uploadId: null,
      },
      { ...document, uploadId: upload.id },
    ];
  });
}

/** One signature as its certificate has it, with what it is worth today. */
function signatureBlocks({ file, report }: PacketInput, signature: Signature): LetterBlock[] {
  const certificate = certificateOf(file, signature, "en");
  const consent = file.consents.find(({ id }) => id === signature.consentId);
  if (certificate === null || consent === undefined) return [];
  const standing = CONSENT_STANDING_WORDS[signedStanding(file, consent, report)];
  return [
    heading(certificate.title),
    ...table(
      ["", ""],
      [
        ["Worth today", standing],
        ...certificate.rows.map(({ label, lines }) => [label, lines.join("\n")]),
      ],
    ),
    ...(signature.drawingId === null
      ? []
      : pictures([
          { uploadId: signature.drawingId, caption: "As drawn while signing", alt: "Signature" },
        ])),
    paragraph(certificate.note),
  ];
}
