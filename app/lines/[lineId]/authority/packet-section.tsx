import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { Packet } from "#lib/domain/packet/packet.ts";
import { counted } from "../names.ts";
import { buildPacketAction } from "./actions.ts";
import { MadePapers } from "./made-papers.tsx";

/** The packet as it would be now, a button that makes it one PDF, and those made before. */
export function PacketSection({
  lineId,
  packet,
  today,
  work,
}: {
  readonly lineId: string;
  readonly packet: Packet;
  readonly today: string;
  readonly work: boolean;
}) {
  return (
    <Section
      title="Permit packet"
      id="packet"
      note="The whole application as one PDF with page numbers and bookmarks: what this authority asks for and no more, since it becomes a public record. Missing items are listed on the first page. Every packet you create is kept."
    >
      <p>
        Current file: {counted(packet.sheets.length, "part")}
        {packet.missing.length === 0 ? ", nothing missing." : "."}
      </p>
      {packet.missing.length === 0 ? null : (
        <details>
          <summary>{counted(packet.missing.length, "item")} missing</summary>
          <ul>
            {packet.missing.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
      {packet.contents.map((line) => (
        <p key={line} className="muted">
          {line}
        </p>
      ))}
      {work ? (
        <JobButton
          start={buildPacketAction.bind(null, lineId, [])}
          working="Building the packet"
          paper={`/lines/${lineId}/notices/paper`}
          main
        >
          Build the packet
        </JobButton>
      ) : null}
      <Built lineId={lineId} today={today} />
    </Section>
  );
}

function Built({ lineId, today }: { readonly lineId: string; readonly today: string }) {
  if (listJobs(db(), lineId).some(({ kind }) => kind === "packet"))
    return (
      <MadePapers lineId={lineId} today={today} kind="packet" caption="Packets, newest first" />
    );
  return (
    <Empty title="No packets yet.">
      <p>Create one any time, even just to see what is missing; nothing is sent.</p>
    </Empty>
  );
}
