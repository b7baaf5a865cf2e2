"use client";

import { type ChangeEvent, useId, useState } from "react";
import { decodeText } from "#lib/exchange/table-file/decode-text.ts";

const MOST_BYTES = 1_000_000;

/** A box for the words, and a file that fills it. */
export function SpokenText() {
  const [text, setText] = useState("");
  const [refusal, setRefusal] = useState("");
  const id = useId();

  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const { target } = event;
    const file = target.files?.[0];
    if (file === undefined) return;
    setRefusal("");
    if (file.size > MOST_BYTES) {
      setRefusal(`${file.name} is too large for a transcript. Choose the text, not the recording.`);
      target.value = "";
      return;
    }
    const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
    if (decoded === null || decoded.text.trim() === "") {
      const what = decoded === null ? "is no text" : "is empty";
      setRefusal(`${file.name} ${what}. Choose the transcript as .vtt, .srt or .txt.`);
      target.value = "";
    } else setText(decoded.text);
  }

  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-file`}>A transcript</label>
        <span id={`${id}-hint`} className="hint">
          As .vtt, .srt or .txt; it fills the box below.
        </span>
        <input
          id={`${id}-file`}
          className="input"
          type="file"
          name="file"
          accept=".vtt,.srt,.txt,text/plain,text/vtt"
          aria-describedby={`${id}-hint ${id}-said`}
          aria-invalid={refusal === "" ? undefined : true}
          onChange={choose}
        />
        <span id={`${id}-said`} role="status">
          {refusal === "" ? null : <span className="mend">{refusal}</span>}
        </span>
      </div>
      <div className="field">
        <label htmlFor={`${id}-text`}>Or the words, pasted</label>
        <textarea
          id={`${id}-text`}
          className="input"
          name="text"
          rows={10}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
      </div>
    </>
  );
}
