import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { mustChooseOption } from "#lib/domain/sharing/scope-in-force.ts";
import { counted } from "../names.ts";

type Missing = "work" | "option";

/** What has to come before the rules can be compared; null: nothing. */
export function whyNotReady(file: LineFile): Missing | null {
  if (file.scope.length === 0) return "work";
  return mustChooseOption(file) ? "option" : null;
}

/** Says what comes first, with the way there. */
export function NotReady({
  lineId,
  file,
  missing,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly missing: Missing;
}) {
  if (missing === "work")
    return (
      <Empty title="No work items yet.">
        <p>
          <Link href={`/lines/${lineId}/cost`}>Price the work</Link>, then compare who would pay
          what under each rule.
        </p>
      </Empty>
    );
  return (
    <Empty title="No repair option is selected.">
      <p>
        {counted(file.options.length, "option")} are priced.{" "}
        <Link href={`/lines/${lineId}/cost/options`}>Select one</Link>; the rules are then compared
        for it.
      </p>
    </Empty>
  );
}
