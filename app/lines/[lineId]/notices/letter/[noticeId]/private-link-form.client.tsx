"use client";

import { useActionState, useEffect, useId, useRef, useState } from "react";
import { unanswered } from "#app/_components/unanswered.ts";

/** The address of a link that was just made, or why none was. */
export interface MadeLink {
  readonly url: string;
  readonly message: string;
}

type MakeLink = (state: MadeLink, form: FormData) => Promise<MadeLink>;

/** Creates a link and shows it once, to be copied. */
export function PrivateLinkForm({
  make,
  days,
  most,
  again,
}: {
  readonly make: MakeLink;
  readonly days: number;
  readonly most: number;
  /** There is an active link already, which a new one revokes. */
  readonly again: boolean;
}) {
  const [isLive, setLive] = useState(false);
  useEffect(() => setLive(true), []);
  // Before the scripts are there the form goes to the action itself.
  const [made, dispatch, pending] = useActionState(isLive ? answered(make) : make, {
    url: "",
    message: "",
  });
  const id = useId();
  return (
    <form action={dispatch} className="stack-tight screen-only" aria-label="Create a private link">
      <div className="cluster cluster-end">
        <div className="field">
          <label htmlFor={id}>Expires after</label>
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
          {pending ? "Creating …" : buttonWords(again)}
        </button>
      </div>
      <div role="status">
        {made.message === "" ? null : <p className="mend">{made.message}</p>}
        {made.url === "" || pending ? null : <Shown url={made.url} />}
      </div>
    </form>
  );
}

function answered(make: MakeLink): MakeLink {
  return (state, form) =>
    make(state, form).catch((error: unknown) => ({ url: "", message: unanswered(error) }));
}

function buttonWords(again: boolean): string {
  return again ? "Create a new link and revoke this one" : "Create a private link";
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
        Copy this link now; it won’t be shown again
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
          Share it with this reader only. It is not stored; if it is lost, create a new one.
        </span>
      </div>
    </div>
  );
}
