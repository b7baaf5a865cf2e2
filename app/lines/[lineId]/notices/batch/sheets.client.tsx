"use client";

import { useState } from "react";
import { JobButton, type JobStart } from "#app/_components/job-button.client.tsx";
import styles from "./batch.module.css";

interface SheetsProps {
  readonly print: (subjectIds: readonly string[]) => Promise<JobStart>;
  readonly noticeIds: readonly string[];
  readonly paper: string;
}

/** Makes label sheets of the kind that is chosen. */
export function LabelButton({
  sheets,
  print,
  noticeIds,
  paper,
}: SheetsProps & {
  readonly sheets: readonly { readonly value: string; readonly label: string }[];
}) {
  const [sheet, setSheet] = useState(sheets[0]?.value ?? "");
  return (
    <div className={`cluster ${styles["labels"]}`}>
      <label className="field">
        <span className="strong">Labels</span>
        <select className="input" value={sheet} onChange={(event) => setSheet(event.target.value)}>
          {sheets.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
      <JobButton
        key={sheet}
        start={() => print([sheet, ...noticeIds])}
        working="Making the labels"
        paper={paper}
      >
        Make label sheets
      </JobButton>
    </div>
  );
}

/** Makes door hangers, three to a sheet. */
export function HangerButton({ print, noticeIds, paper }: SheetsProps) {
  return (
    <JobButton start={() => print(noticeIds)} working="Making the door hangers" paper={paper}>
      Make door hangers
    </JobButton>
  );
}
