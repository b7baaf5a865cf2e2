import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./sheet-states.ts";

interface Enclosed {
  readonly uploadId: string | null;
  readonly title: string;
}

/**
 * The stored files that belong into the packet, each once: what was added for a requirement, signed
 * consents, permit records, and proofs of delivery.
 */
export function uploadSheets({ file }: PacketInput): Sheet[] {
  const requirement = (id: string) =>
    file.authority?.requirements.find((each) => each.id === id)?.title ?? "Enclosure";
  const party = (id: string | undefined) =>
    file.parties.find((each) => each.id === id)?.name ?? "unknown";
  const notice = (id: string) => file.notices.find((each) => each.id === id);
  const enclosed: Enclosed[] = [
    ...file.requirementMarks
      .filter(({ state }) => state !== "does-not-apply")
      .map(({ uploadId, requirementId }) => ({ uploadId, title: requirement(requirementId) })),
    ...file.consents.map(({ uploadId, partyId }) => ({
      uploadId,
      title: `Signed by ${party(partyId)}`,
    })),
    ...file.records.map(({ uploadId, title, number }) => ({
      uploadId,
      title: number === "" ? title : `${title} ${number}`,
    })),
    ...file.deliveries.map(({ proofUploadId, noticeId }) => ({
      uploadId: proofUploadId,
      title: `Proof of delivery to ${party(notice(noticeId)?.partyId)}`,
    })),
  ];
  const seen = new Set<string>();
  return enclosed.flatMap(({ uploadId, title }) => {
    const upload = file.uploads.find(({ id }) => id === uploadId);
    if (!upload || seen.has(upload.id)) return [];
    seen.add(upload.id);
    return [
      {
        kind: "upload" as const,
        title: `${title} (${upload.name})`,
        blocks: [],
        drawing: null,
        uploadId: upload.id,
      },
    ];
  });
}
