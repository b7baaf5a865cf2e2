"use client";

import { useId, useRef } from "react";
import { sendFileTo } from "#app/_components/send-file.ts";
import { type UploadStage, useUpload } from "#app/_components/use-upload.ts";

interface LinkFileWords {
  readonly label: string;
  readonly hint: string;
  readonly drop: string;
  readonly broken: string;
  /** With `{name}` and ` 0 %` in their places. */
  readonly storing: string;
  /** With `{name}` in its place. */
  readonly stored: string;
}

/** A photo or paper to go with an answer, sent as soon as it is chosen. */
export function LinkFile({
  to,
  name,
  words,
}: {
  readonly to: string;
  readonly name: string;
  readonly words: LinkFileWords;
}) {
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const { stage, take, drop } = useUpload({
    input,
    send: (sending) => sendFileTo(to, { ...sending, broken: words.broken }),
  });

  return (
    <div className="field">
      <label htmlFor={id}>{words.label}</label>
      <span id={`${id}-hint`} className="hint">
        {words.hint}
      </span>
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept=".pdf,.jpg,.jpeg,.png,application/pdf,image/jpeg,image/png"
        aria-describedby={`${id}-hint ${id}-stage`}
        aria-invalid={stage.at === "refused" ? true : undefined}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) take(file);
        }}
      />
      <input type="hidden" name={name} value={stage.at === "stored" ? stage.id : ""} />
      <span id={`${id}-stage`} role="status">
        {stage.at === "refused" ? <span className="mend">{stage.message}</span> : null}
        {stage.at === "sending" || stage.at === "stored" ? (
          <span>
            {saidOf(stage, words)}{" "}
            <button type="button" className="link-button" onClick={drop}>
              {words.drop}
            </button>
          </span>
        ) : null}
      </span>
    </div>
  );
}

function saidOf(
  stage: Extract<UploadStage, { at: "sending" | "stored" }>,
  words: LinkFileWords,
): string {
  if (stage.at === "stored") return words.stored.replace("{name}", stage.name);
  return words.storing.replace("{name}", stage.name).replace(" 0 %", ` ${stage.percent} %`);
}
