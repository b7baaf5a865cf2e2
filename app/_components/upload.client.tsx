"use client";

import { useEffect, useId, useRef, useState } from "react";
import { formatBytes } from "./bytes.ts";
import { sendFile } from "./send-file.ts";
import styles from "./upload.module.css";
import { useEarlyFile } from "./use-early-file.ts";

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

type Stage =
  | { readonly at: "empty" }
  | { readonly at: "sending"; readonly name: string; readonly percent: number }
  | { readonly at: "stored"; readonly id: string; readonly name: string; readonly size: string }
  | { readonly at: "refused"; readonly message: string };

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
  const start: Stage =
    stored === undefined
      ? { at: "empty" }
      : { at: "stored", id: stored.id, name: stored.name, size: "" };
  const [stage, setStage] = useState<Stage>(start);
  const input = useRef<HTMLInputElement>(null);
  const abort = useRef<AbortController | null>(null);
  const id = useId();

  useEffect(() => {
    const form = input.current?.form;
    const clear = () => setStage({ at: "empty" });
    form?.addEventListener("reset", clear);
    return () => {
      form?.removeEventListener("reset", clear);
      abort.current?.abort();
    };
  }, []);

  useEarlyFile(input, take);

  async function take(file: File) {
    abort.current?.abort();
    const sending = new AbortController();
    abort.current = sending;
    setStage({ at: "sending", name: file.name, percent: 0 });
    const sent = await sendFile({
      lineId,
      file,
      signal: sending.signal,
      onProgress: (percent) => setStage({ at: "sending", name: file.name, percent }),
    });
    if (sending.signal.aborted) return;
    if (input.current !== null) input.current.value = "";
    setStage(
      sent.ok
        ? { at: "stored", id: sent.value, name: file.name, size: formatBytes(file.size) }
        : { at: "refused", message: sent.error },
    );
    if (sent.ok) onStored?.({ id: sent.value, name: file.name });
  }

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
        <StageWords
          stage={stage}
          onDrop={() => {
            abort.current?.abort();
            setStage({ at: "empty" });
            onStored?.(null);
          }}
        />
      </span>
    </div>
  );
}

function StageWords({ stage, onDrop }: { readonly stage: Stage; readonly onDrop: () => void }) {
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
          {stage.name} uploaded{stage.size === "" ? "" : ` (${stage.size})`}.{" "}
          <button type="button" className="link-button" onClick={onDrop}>
            Remove
          </button>
        </span>
      );
    case "refused":
      return <span className="mend">{stage.message}</span>;
  }
}
