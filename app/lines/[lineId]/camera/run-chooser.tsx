import Link from "next/link";
import type { Run } from "#lib/domain/facts/run.ts";
import styles from "./camera.module.css";

/** Which run is worked on; there is one at a time, so that a phone can hold it. */
export function RunChooser({
  at,
  runs,
  chosen,
}: {
  /** The page's own address, without the run. */
  readonly at: string;
  readonly runs: readonly Run[];
  readonly chosen: Run;
}) {
  if (runs.length < 2) return null;
  return (
    <nav aria-label="Runs" className={`${styles["chooser"]} screen-only`}>
      {runs.map((run) => (
        <Link
          key={run.id}
          href={`${at}?run=${encodeURIComponent(run.id)}`}
          scroll={false}
          aria-current={run.id === chosen.id ? "page" : undefined}
        >
          {run.name}
        </Link>
      ))}
    </nav>
  );
}
