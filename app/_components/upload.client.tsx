"use client";

import { useId, useRef } from "react";
import { formatBytes } from "./bytes.ts";
import { sendFile } from "./send-file.ts";
import styles from "./upload.module.css";
import { type UploadStage, useUpload } from "./use-upload.ts";

interface UploadProps {
  readonly lineId: string;
  /** Name of the form field that carries the stored file's id. */
  readonly name: string;
  readonly label: string;
  readonly hint?: string;
  /** A file that is there already: kept unless another one is chosen. */
  readonly stored?: { readonly id: string; readonly name: string };
  /** Only a PNG or JPEG will do. */
  readonly picture?: boolean;
  /** Hears what is stored now; null once it is left out. */
  readonly onStored?: (stored: { readonly id: string; readonly name: string } | null) => void;
}

const PICTURES = ".jpg,.jpeg,.png,image/jpeg,image/png";

/**
 * A file to go with a form. It is stored as soon as it is chosen, with its progress shown; the form
 * sends only the id of what was stored. A refusal says why and what to do.
 */
export function Upload({
  lineId,
  name,
  label,
  hint,
  stored,
  picture = false,
  onStored,
}: UploadProps) {
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const { stage, take, drop } = useUpload({
    input,
    ...(stored === undefined ? {} : { start: { at: "stored", ...stored, bytes: null } }),
    send: (sending) => sendFile({ lineId, ...sending }),
    onStored,
  });

  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {hint === undefined ? null : (
        <span id={`${id}-hint`} className="hint">
          {hint}
        </span>
      )}
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept={picture ? PICTURES : `.pdf,application/pdf,${PICTURES}`}
        aria-describedby={`${id}-stage${hint === undefined ? "" : ` ${id}-hint`}`}
        aria-invalid={stage.at === "refused" ? true : undefined}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) take(file);
        }}
      />
      <input type="hidden" name={name} value={stage.at === "stored" ? stage.id : ""} />
      <span id={`${id}-stage`} role="status">
        <StageWords stage={stage} onDrop={drop} />
      </span>
    </div>
  );
}

function StageWords({
  stage,
  onDrop,
}: {
  readonly stage: UploadStage;
  readonly onDrop: () => void;
}) {
  switch (stage.at) {
    case "empty":
      return null;
    case "sending":
      return (
        <span className="stack-tight">
          <span>
            Uploading {stage.name}, {stage.percent}%.{" "}
            <button type="button" className="link-button" onClick={onDrop}>
              Cancel
            </button>
          </span>
          <progress max={100} value={stage.percent} className={styles["progress"]} />
        </span>
      );
    case "stored":
      return (
        <span>
          {stage.name} uploaded{stage.bytes === null ? "" : ` (${formatBytes(stage.bytes)})`}.{" "}
          <button type="button" className="link-button" onClick={onDrop}>
            Remove
          </button>
        </span>
      );
    case "refused":
      return <span className="mend">{stage.message}</span>;
  }
}
