"use client";

import { unstable_rethrow } from "next/navigation";
import type { ReactNode } from "react";
import { ActionForm, useFormView } from "#app/_components/action-form.client.tsx";
import { type FormAction, refused } from "#app/form.ts";
import { TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { TEST_RESULT_WORDS } from "#lib/domain/tiein/test-words.ts";
import styles from "./test-day.module.css";

const PRESSES = TEST_RESULTS.map((value) => {
  const word = TEST_RESULT_WORDS[value];
  return { value, word: word.charAt(0).toUpperCase() + word.slice(1) };
});

const NO_SIGNAL =
  "Not saved: no connection. Your entry is still here; tap again when you’re back online.";

/**
 * A form for the field, with one button for each result. Where the connection fails, it says so and
 * keeps what was typed.
 */
export function ResultForm({
  action,
  label,
  children,
}: {
  readonly action: FormAction;
  readonly label: string;
  readonly children: ReactNode;
}) {
  const kept: FormAction = async (state, form) => {
    try {
      return await action(state, form);
    } catch (error) {
      unstable_rethrow(error);
      return refused(NO_SIGNAL, form);
    }
  };
  return (
    <ActionForm action={kept} label={label} className={styles["result"] ?? ""}>
      {children}
      <Presses />
    </ActionForm>
  );
}

function Presses() {
  const { pending } = useFormView();
  return (
    <div className={styles["presses"]}>
      {PRESSES.map(({ value, word }) => (
        <button
          key={value}
          type="submit"
          name="result"
          value={value}
          className={`button ${styles["press"]}`}
          aria-disabled={pending}
          onClick={(event) => {
            if (pending) event.preventDefault();
          }}
        >
          {word}
        </button>
      ))}
    </div>
  );
}
