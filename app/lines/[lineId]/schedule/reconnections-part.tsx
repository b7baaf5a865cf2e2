import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { tallyOf, tallySentence } from "#lib/domain/reconnection/tally.ts";
import { workInForce } from "#lib/domain/sharing/scope-in-force.ts";

/** Branches that the work closes, in a sentence, with the way to their tally. */
export function Reconnections({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  const tally = tallyOf(file, workInForce(file), report.tieIns);
  if (tally.length === 0) return null;
  return (
    <Section
      title="Branches to reconnect"
      id="branches"
      actions={
        <Link href={`/lines/${lineId}/schedule/reconnections`}>
          Reconnection tally for the crew
        </Link>
      }
    >
      <p>{tallySentence(tally)}.</p>
    </Section>
  );
}
