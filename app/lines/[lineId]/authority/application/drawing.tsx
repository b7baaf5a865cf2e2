import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { DrawingMark } from "#lib/domain/facts/application.ts";
import type { DrawingCheck } from "#lib/domain/packet/drawing-checklist.ts";
import { seenOf } from "#lib/operations/seen.ts";
import styles from "../authority.module.css";
import { markDrawingAction } from "./actions.ts";

const STATE_WORDS: Readonly<Record<DrawingCheck["state"], string>> = {
  shown: "shown",
  missing: "missing",
  "does-not-apply": "not applicable",
};

const MARKS = [
  { value: "shown", label: "shown" },
  { value: "not-shown", label: "not shown" },
  { value: "does-not-apply", label: "not applicable" },
];

/** Each thing that the counter looks for on the drawing, marked by the program or by a person. */
export function DrawingChecks({
  lineId,
  checks,
  marks,
  work,
}: {
  readonly lineId: string;
  /** What people marked so far. */
  readonly marks: readonly DrawingMark[];
  readonly checks: readonly DrawingCheck[];
  readonly work: boolean;
}) {
  return (
    <ul className={`plain-list ${styles["checks"]}`}>
      {checks.map(({ item, state, by, sentence }) => (
        <li key={item.id} className={styles["check"]}>
          <p className={styles["state"]}>
            <span className={state === "missing" ? "tag strong" : "tag tag-done"}>
              {STATE_WORDS[state]}
            </span>
          </p>
          <div className="stack-tight">
            <h3>{item.title}</h3>
            <p>
              {sentence}
              {item.citation === "" ? null : <span className="muted small"> {item.citation}</span>}
            </p>
            {work && by !== "program" ? (
              <details>
                <summary>Mark it</summary>
                <ActionForm
                  key={state}
                  action={markDrawingAction.bind(null, { lineId, itemId: item.id })}
                  label={`Mark: ${item.title}`}
                >
                  <SeenField
                    value={seenOf(marks.findLast(({ itemId }) => itemId === item.id) ?? null)}
                  />
                  <div className="form-grid">
                    <Choice label="Drawing" name="state" required options={MARKS} />
                    <Field
                      label="Where, or why not"
                      name="note"
                      example="On the surveyor’s sheet, enclosed"
                    />
                  </div>
                  <div>
                    <SubmitButton pendingWord="Saving …" quiet>
                      Save
                    </SubmitButton>
                  </div>
                </ActionForm>
              </details>
            ) : null}
          </div>
        </li>
      ))}
    </ul>
  );
}
