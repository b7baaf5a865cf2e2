"use client";

import type { ReactNode } from "react";
import { useFormStatus } from "react-dom";
import { useFormView } from "./action-form.client.tsx";

export interface SubmitButtonProps {
  readonly children: ReactNode;
  /** Said while the form is on its way, say `Saving …`. */
  readonly pendingWord: string;
  /** Not the main thing on its page. */
  readonly quiet?: boolean;
  readonly name?: string;
  readonly value?: string;
}

export function Submit({ children, pendingWord, quiet, name, value }: SubmitButtonProps) {
  const view = useFormView();
  const status = useFormStatus();
  const pending = view.pending || status.pending;
  return (
    <button
      type="submit"
      name={name}
      value={value}
      className={quiet === true ? "button" : "button button-main"}
      aria-disabled={pending}
      onClick={(event) => {
        if (pending) event.preventDefault();
      }}
    >
      {pending ? pendingWord : children}
    </button>
  );
}
