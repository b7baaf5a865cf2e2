import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import type { LinePart } from "../part.ts";

/** What is lacking before record and camera can be compared; nothing where both are there. */
export function NothingToCompare({ lineId, file, report }: LinePart) {
  const noEntries = file.entries.length === 0;
  const noTieIns = report.tieIns.length === 0;
  if (!noEntries && !noTieIns) return null;
  return (
    <Empty
      title="Nothing to compare yet."
      example="The card shows House 14 at 34.0 ft left; the camera saw T2 at 36.4 ft left. The card reads 2.4 ft short throughout, so they are proposed as a match, and you accept or reject it."
    >
      {noEntries ? (
        <p>
          First <Link href={`/lines/${lineId}/record`}>enter what is on record</Link>.
        </p>
      ) : null}
      {noTieIns ? (
        <p>
          {noEntries ? "Then" : "First"}{" "}
          <Link href={`/lines/${lineId}/camera`}>enter what the camera saw</Link>.
        </p>
      ) : null}
    </Empty>
  );
}
