import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getKeptFile } from "#db/queries/line-file.ts";
import { likelySame } from "#lib/domain/party/likely-same.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { DecidedPairs } from "./decided.tsx";
import { AnyPair, LikelyPair } from "./pair.tsx";

export const metadata = { title: "Duplicates" };

export default async function DuplicatesPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, may } = await lineFileOf(lineId);
  const kept = getKeptFile(db(), lineId) ?? file;
  const pairs = likelySame(file);
  const work = may("work-the-file");
  return (
    <>
      <PageHead
        asked="Is anyone on the list twice?"
        answer={
          pairs.length === 0
            ? "No likely duplicate"
            : `${counted(pairs.length, "likely duplicate")} to decide`
        }
      />
      <Section
        title="Likely duplicates"
        note="Merging keeps one name. Letters, consents, signatures and payments of both stay as recorded and count for that name. You can undo it."
      >
        {pairs.length === 0 ? (
          <Empty title="Names, addresses, phones and emails show no likely duplicate." />
        ) : (
          pairs.map((pair) => (
            <LikelyPair
              key={`${pair.a.id} ${pair.b.id}`}
              lineId={lineId}
              file={file}
              pair={pair}
              work={work}
            />
          ))
        )}
      </Section>
      {work && file.parties.length > 1 ? (
        <Section title="Merge two others" folded="Two people that the list above does not show">
          <AnyPair lineId={lineId} file={file} />
        </Section>
      ) : null}
      {kept.sameParties.length === 0 ? null : (
        <Section title="Decided">
          <DecidedPairs lineId={lineId} file={kept} work={work} />
        </Section>
      )}
    </>
  );
}
