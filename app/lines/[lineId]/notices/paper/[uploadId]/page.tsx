import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { formatBytes } from "#app/_components/bytes.ts";
import { PageHead } from "#app/_components/page-head.tsx";
import { PaperView } from "#app/_components/paper-view.client.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { Job } from "#lib/domain/facts/job.ts";
import { lineFileOf } from "../../../file.ts";

export const metadata: Metadata = { title: "Document" };

export default async function PaperPage({
  params,
}: {
  readonly params: Promise<{ lineId: string; uploadId: string }>;
}) {
  const { lineId, uploadId } = await params;
  const { file } = await lineFileOf(lineId);
  const upload = file.uploads.find((each) => each.id === uploadId);
  if (upload === undefined) notFound();
  const job = listJobs(db(), lineId).find((each) => each.uploadId === upload.id);
  const back = backFrom(job);
  const address = `/lines/${lineId}/uploads/${upload.id}`;
  return (
    <>
      <PageHead asked={upload.name}>
        <p className="cluster">
          <a href={address} download={upload.name}>
            Download
          </a>
          <a href={address} target="_blank" rel="noreferrer">
            Open in a new tab to print
          </a>
          <Link href={`/lines/${lineId}/${back.page}`}>{back.words}</Link>
        </p>
        <p className="muted">
          Added by {upload.addedBy}, {formatBytes(upload.bytes)}; document ID{" "}
          {upload.sha256.slice(0, 16)}.
        </p>
      </PageHead>
      {upload.type.startsWith("image/") ? (
        // biome-ignore lint/performance/noImgElement: a stored photo of unknown size, served as it is
        <img src={address} alt={upload.name} style={{ maxWidth: "100%" }} />
      ) : (
        <PaperView address={address} name={upload.name} />
      )}
    </>
  );
}

/** The page under the line that this paper belongs to. */
function backFrom(job: Pick<Job, "kind" | "subjectIds"> | undefined) {
  if (job?.kind === "form")
    return { page: `authority/forms/${job.subjectIds[0]}`, words: "Back to the form" };
  if (job?.kind === "packet")
    return { page: "authority#packet", words: "Back to What does the authority need?" };
  return { page: "notices", words: "Back to the letters" };
}
