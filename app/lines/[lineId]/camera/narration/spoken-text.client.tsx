"use client";

import { useEffect, useId, useRef, useState } from "react";
import { useEarlyFile } from "#app/_components/use-early-file.ts";
import { decodeText } from "#lib/exchange/table-file/decode-text.ts";

const MOST_BYTES = 1_000_000;

/** A box for the words, and a file that fills it. */
export function SpokenText() {
  const [text, setText] = useState("");
  const [refusal, setRefusal] = useState("");
  const input = useRef<HTMLInputElement>(null);
  const words = useRef<HTMLTextAreaElement>(null);
  const id = useId();

  useEarlyFile(input, take);
  useEffect(() => {
    // Pasted before the page's scripts were there.
    const early = words.current?.value ?? "";
    if (early !== "") setText(early);
  }, []);

  async function take(file: File) {
    setRefusal("");
    if (file.size > MOST_BYTES) {
      setRefusal(`${file.name} is too large for a transcript. Choose the text, not the video.`);
      empty();
      return;
    }
    const decoded = decodeText(new Uint8Array(await file.arrayBuffer()));
    if (decoded === null || decoded.text.trim() === "") {
      const what = decoded === null ? "is not a text file" : "is empty";
      setRefusal(`${file.name} ${what}. Choose the transcript as .vtt, .srt or .txt.`);
      empty();
    } else setText(decoded.text);
  }

  function empty() {
    if (input.current !== null) input.current.value = "";
  }

  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-file`}>A transcript</label>
        <span id={`${id}-hint`} className="hint">
          As .vtt, .srt or .txt; it fills the box below.
        </span>
        <input
          ref={input}
          id={`${id}-file`}
          className="input"
          type="file"
          name="file"
          accept=".vtt,.srt,.txt,text/plain,text/vtt"
          aria-describedby={`${id}-hint ${id}-said`}
          aria-invalid={refusal === "" ? undefined : true}
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined) take(file);
          }}
        />
        <span id={`${id}-said`} role="status">
          {refusal === "" ? null : <span className="mend">{refusal}</span>}
        </span>
      </div>
      <div className="field">
        <label htmlFor={`${id}-text`}>Or paste the text</label>
        <textarea
          ref={words}
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
