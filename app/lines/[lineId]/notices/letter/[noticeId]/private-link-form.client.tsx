"use client";

import { useActionState, useId, useRef, useState } from "react";

/** The address of a link that was just made, or why none was. */
export interface MadeLink {
  readonly url: string;
  readonly message: string;
}

type MakeLink = (state: MadeLink, form: FormData) => Promise<MadeLink>;

/** Makes a link and shows it once, to be copied. */
export function PrivateLinkForm({
  make,
  days,
  most,
  again,
}: {
  readonly make: MakeLink;
  readonly days: number;
  readonly most: number;
  /** There is a good link already, which a new one calls back. */
  readonly again: boolean;
}) {
  const [made, dispatch, pending] = useActionState(make, { url: "", message: "" });
  const id = useId();
  return (
    <form action={dispatch} className="stack-tight screen-only" aria-label="Make a private link">
      <div className="cluster cluster-end">
        <div className="field">
          <label htmlFor={id}>Good for</label>
          <span className="input-line input-unit">
            <input
              id={id}
              className="input"
              name="days"
              type="number"
              min={1}
              max={most}
              defaultValue={days}
              required
              style={{ maxWidth: "9ch" }}
            />
            <span className="muted">days</span>
          </span>
        </div>
        <button type="submit" className="button" aria-disabled={pending}>
          {pending ? "Making …" : buttonWords(again)}
        </button>
      </div>
      <div role="status">
        {made.message === "" ? null : <p className="mend">{made.message}</p>}
        {made.url === "" || pending ? null : <Shown url={made.url} />}
      </div>
    </form>
  );
}

function buttonWords(again: boolean): string {
  return again ? "Make a new one, and call this one back" : "Make a private link";
}

function Shown({ url }: { readonly url: string }) {
  const [copied, setCopied] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const id = useId();

  async function copy() {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(url);
      setCopied(true);
    } catch {
      setCopied(false);
    }
  }

  return (
    <div className="stack-tight">
      <label htmlFor={id} className="strong">
        The link, shown this once: copy it now
      </label>
      <input
        ref={field}
        id={id}
        className="input"
        style={{ maxWidth: "46rem" }}
        readOnly
        value={url}
        onFocus={(event) => event.currentTarget.select()}
      />
      <div className="cluster">
        <button type="button" className="button" onClick={copy}>
          {copied ? "Copied" : "Copy the link"}
        </button>
        <span className="muted small">
          Give it to this reader only. It is kept nowhere; if it is lost, make a new one.
        </span>
      </div>
    </div>
  );
}
