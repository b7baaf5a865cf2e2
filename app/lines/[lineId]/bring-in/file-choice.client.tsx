"use client";

import { useId, useRef } from "react";
import { useEarlyFile } from "#app/_components/use-early-file.ts";

/** The file's field, with what is taken and what was wrong with the last one. */
export function FileChoice({
  name,
  reading,
  refusal,
  onFile,
}: {
  readonly name: string | null;
  readonly reading: boolean;
  readonly refusal: string;
  readonly onFile: (file: File) => void;
}) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  useEarlyFile(input, take);

  function take(file: File) {
    onFile(file);
    if (input.current !== null) input.current.value = "";
  }

  return (
    <div className="field">
      <label htmlFor={id}>{name === null ? "A spreadsheet or CSV file" : "Another file"}</label>
      <span id={`${id}-hint`} className="hint">
        XLSX, CSV or text with tabs; up to 4 MB and 2,000 rows. A cell with a formula imports as the
        value that shows.
      </span>
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept=".xlsx,.csv,.tsv,.txt"
        aria-describedby={`${id}-hint ${id}-said`}
        aria-invalid={refusal === "" ? undefined : true}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) take(file);
        }}
      />
      <span id={`${id}-said`} role="status">
        {reading ? <span className="muted">Reading…</span> : null}
        {reading || refusal === "" ? null : <span className="mend">{refusal}</span>}
        {reading || refusal !== "" || name === null ? null : <span className="strong">{name}</span>}
      </span>
    </div>
  );
}
