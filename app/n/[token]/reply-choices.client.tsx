"use client";

import { useFormView } from "#app/_components/action-form.client.tsx";
import styles from "./private-page.module.css";

/** What can be said, one of them; the one that was chosen stays when the form comes back. */
export function ReplyChoices({
  legend,
  choices,
}: {
  readonly legend: string;
  readonly choices: readonly { readonly kind: string; readonly words: string }[];
}) {
  const { state } = useFormView();
  return (
    <fieldset className={styles["choices"]}>
      <legend>{legend}</legend>
      {choices.map(({ kind, words }) => (
        <label key={kind} className={styles["choice"]}>
          <input
            type="radio"
            name="kind"
            value={kind}
            defaultChecked={state.values["kind"] === kind}
          />
          <span>{words}</span>
        </label>
      ))}
    </fieldset>
  );
}
