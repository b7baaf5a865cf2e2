import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { Packet } from "#lib/domain/packet/packet.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { counted } from "../names.ts";
import { buildPacketAction } from "./actions.ts";

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
  const zone = officeZone(db());
  const built = listJobs(db(), lineId).filter((job) => job.kind === "packet");
  if (built.length === 0) {
    return (
      <Empty title="No packets yet.">
        <p>Create one any time, even just to see what is missing; nothing is sent.</p>
      </Empty>
    );
  }
  return (
    <table className="plain">
      <caption>Packets, newest first</caption>
      <thead>
        <tr>
          <th scope="col">Created</th>
          <th scope="col">By</th>
          <th scope="col">Document</th>
        </tr>
      </thead>
      <tbody>
        {built.map((job) => (
          <tr key={job.id}>
            <th scope="row">{formatDay(dayAt(job.createdAt, zone), today)}</th>
            <td>{job.by}</td>
            <td>
              {job.uploadId === null ? (
                <span className="muted">{job.state}</span>
              ) : (
                <Link href={`/lines/${lineId}/notices/paper/${job.uploadId}`}>Open it</Link>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
