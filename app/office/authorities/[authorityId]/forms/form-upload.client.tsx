"use client";

import { useRouter } from "next/navigation";
import { useEffect, useId, useRef, useState } from "react";
import { sendFileTo } from "#app/_components/send-file.ts";
import { useEarlyFile } from "#app/_components/use-early-file.ts";

type Stage =
  | { readonly at: "waiting" }
  | { readonly at: "sending"; readonly name: string; readonly percent: number }
  | { readonly at: "stored"; readonly name: string }
  | { readonly at: "refused"; readonly message: string };

/** A form of the authority: taken in as soon as it is chosen, then its page opens. */
export function FormUpload({
  authorityId,
  formId = null,
  label,
}: {
  readonly authorityId: string;
  /** The form of which it is the newer print. */
  readonly formId?: string | null;
  readonly label: string;
}) {
  const [stage, setStage] = useState<Stage>({ at: "waiting" });
  const input = useRef<HTMLInputElement>(null);
  const abort = useRef<AbortController | null>(null);
  const router = useRouter();
  const id = useId();
  useEffect(() => () => abort.current?.abort(), []);
  useEarlyFile(input, take);

  async function take(file: File) {
    abort.current?.abort();
    const sending = new AbortController();
    abort.current = sending;
    setStage({ at: "sending", name: file.name, percent: 0 });
    const forms = `/office/authorities/${encodeURIComponent(authorityId)}/forms`;
    const sent = await sendFileTo(
      formId === null ? forms : `${forms}?form=${encodeURIComponent(formId)}`,
      {
        file,
        signal: sending.signal,
        onProgress: (percent) => setStage({ at: "sending", name: file.name, percent }),
      },
    );
    if (sending.signal.aborted) return;
    if (input.current !== null) input.current.value = "";
    if (!sent.ok) return setStage({ at: "refused", message: sent.error });
    setStage({ at: "stored", name: file.name });
    if (formId === null) router.push(`${forms}/${encodeURIComponent(sent.value)}`);
    else router.refresh();
  }

  return (
    <div className="field screen-only">
      <label htmlFor={id}>{label}</label>
      <input
        ref={input}
        id={id}
        type="file"
        className="input"
        accept=".pdf,application/pdf"
        aria-describedby={`${id}-stage`}
        aria-invalid={stage.at === "refused" ? true : undefined}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file !== undefined) void take(file);
        }}
      />
      <span id={`${id}-stage`} role="status">
        {stage.at === "sending" ? (
          <span className="muted">
            {stage.percent < 100
              ? `Uploading ${stage.name}, ${stage.percent}%.`
              : `Reading ${stage.name} …`}
          </span>
        ) : null}
        {stage.at === "stored" ? <span className="muted">{stage.name} added.</span> : null}
        {stage.at === "refused" ? <span className="mend">{stage.message}</span> : null}
      </span>
    </div>
  );
}
