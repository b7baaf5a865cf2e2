import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PacketCheck } from "#lib/domain/packet/packet.ts";
import { PaperLink } from "../notices/paper-link.tsx";
import { optionsOf, REQUIREMENT_WORDS } from "../terms.ts";
import { markRequirementAction } from "./actions.ts";
import styles from "./authority.module.css";
import { inOrder } from "./check-order.ts";

/** Every requirement with its state, what is missing first, and a place to mark it. */
export function Checklist({
  lineId,
  file,
  checks,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly checks: readonly PacketCheck[];
  readonly work: boolean;
}) {
  if (checks.length === 0) {
    return (
      <Empty title="This authority has no requirements entered.">
        <p>
          Enter them once in the <a href="/office">office pages</a>, with where each is written.
        </p>
      </Empty>
    );
  }
  return (
    <ul className={`plain-list ${styles["checks"]}`}>
      {inOrder(checks).map((check) => (
        <li key={check.requirementId} className={styles["check"]}>
          <Check lineId={lineId} file={file} check={check} work={work} />
        </li>
      ))}
    </ul>
  );
}

const DUE_WORDS = { work: "before work begins", final: "before the final" };

function Check({
  lineId,
  file,
  check,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly check: PacketCheck;
  readonly work: boolean;
}) {
  const mark = file.requirementMarks.find((each) => each.requirementId === check.requirementId);
  return (
    <>
      <p className={styles["state"]}>
        <span className={check.state === "missing" ? "tag strong" : "tag tag-done"}>
          {REQUIREMENT_WORDS[check.state]}
        </span>
      </p>
      <div className="stack-tight">
        <h3>
          {check.title}
          {check.mandatory ? null : <span className="muted"> (not mandatory)</span>}
          {check.due === "submission" ? null : (
            <span className="muted"> ({DUE_WORDS[check.due]})</span>
          )}
        </h3>
        <p>
          {check.sentence}
          {check.citation === "" ? null : <span className="muted small"> {check.citation}</span>}
        </p>
        {mark === undefined || mark.note === "" ? null : <p>“{mark.note}”</p>}
        <PaperLink lineId={lineId} file={file} uploadId={mark?.uploadId ?? null} words="Paper" />
        {work ? (
          <details>
            <summary>Mark it, or add the paper</summary>
            <ActionForm
              key={mark?.state ?? "unmarked"}
              action={markRequirementAction.bind(null, {
                lineId,
                requirementId: check.requirementId,
              })}
              label={`Mark: ${check.title}`}
            >
              <div className="form-grid">
                <Choice
                  label="How it stands"
                  name="state"
                  required
                  defaultValue={mark?.state ?? check.state}
                  options={optionsOf(REQUIREMENT_WORDS)}
                />
                <Field
                  label="Note"
                  name="note"
                  defaultValue={mark?.note}
                  example="Copy from the county recorder"
                />
                <Upload lineId={lineId} name="uploadId" label="Paper" {...storedOf(file, mark)} />
              </div>
              <div>
                <SubmitButton pendingWord="Marking …" quiet>
                  Mark it
                </SubmitButton>
              </div>
            </ActionForm>
          </details>
        ) : null}
      </div>
    </>
  );
}

function storedOf(
  file: LineFile,
  mark: LineFile["requirementMarks"][number] | undefined,
): { readonly stored?: { readonly id: string; readonly name: string } } {
  const upload = file.uploads.find((each) => each.id === mark?.uploadId);
  return upload === undefined ? {} : { stored: { id: upload.id, name: upload.name } };
}
