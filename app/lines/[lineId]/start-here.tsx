import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import styles from "./start-here.module.css";

interface Step {
  readonly done: boolean;
  /** The page under the line where it is done. */
  readonly where: string;
  readonly what: string;
  readonly how: string;
}

/** What a new file needs before it can answer anything, in the order in which it is entered. */
function stepsOf(file: LineFile): readonly Step[] {
  return [
    {
      done: file.properties.length > 0 && file.roles.length > 0,
      where: "who",
      what: "Enter who is on it",
      how: "Each address that may drain into the pipe, with its owners and occupants. Paste them from a spreadsheet if you have one.",
    },
    {
      done: file.records.length > 0,
      where: "record",
      what: "Enter the permit record",
      how: "The city’s card or drawing, and each connection that it shows.",
    },
    {
      done: file.runs.length > 0,
      where: "camera",
      what: "Enter the camera run",
      how: "Where the camera went in, which way it looked, and what it saw. You can paste what the technician said.",
    },
    {
      done: file.authority !== null && file.line.ruleId !== null,
      where: "responsibility",
      what: "Choose the authority and its rule",
      how: "The city, utility or district whose rules apply. No authority yet? An example to start from is under Office.",
    },
    {
      done: file.notices.length > 0,
      where: "notices/write",
      what: "Write the first letter",
      how: "The shared-line finding to every owner: what was seen, what is not known yet.",
    },
  ];
}

/** Whether the file has its first facts: then the questions themselves say what is next. */
export function isBegun(file: LineFile): boolean {
  return (
    file.line.closedOn !== null ||
    file.notices.length > 0 ||
    stepsOf(file).every(({ done }) => done)
  );
}

/** What comes after a page whose own step is done; null once the file has its first facts. */
export function nextStep(file: LineFile): Pick<Step, "where" | "what"> | null {
  return isBegun(file) ? null : (stepsOf(file).find(({ done }) => !done) ?? null);
}

/** What to do first on a new line, step by step, each with the way there. */
export function StartHere({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  const steps = stepsOf(file);
  const next = steps.find(({ done }) => !done);
  return (
    <Section title="Start here" id="start">
      <ol className={styles["steps"]}>
        {steps.map((step) => (
          <li key={step.where}>
            <Link
              href={`/lines/${lineId}/${step.where}`}
              className={step === next ? "button button-main" : "strong"}
            >
              {step.what}
            </Link>{" "}
            {step.done ? <span className="tag tag-done">done</span> : null}
            {step.done ? null : <p className="muted">{step.how}</p>}
          </li>
        ))}
      </ol>
    </Section>
  );
}
