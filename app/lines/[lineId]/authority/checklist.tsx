import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PacketCheck } from "#lib/domain/packet/packet.ts";
import { REQUIREMENT_WORDS } from "#lib/domain/permit/state-words.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { counted } from "../names.ts";
import { PaperLink } from "../notices/paper-link.tsx";
import { optionsOf } from "../terms.ts";
import { markRequirementAction } from "./actions.ts";
import styles from "./authority.module.css";
import { inOrder } from "./check-order.ts";

interface ChecklistProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly checks: readonly PacketCheck[];
  readonly work: boolean;
}

/** What is still missing, each with a place to mark it; what is settled is folded below. */
export function Checklist({ checks, ...part }: ChecklistProps) {
  const { authority } = part.file;
  const missing = checks.filter(({ state }) => state === "missing");
  const settled = checks.filter(({ state }) => state !== "missing");
  const words = `${settled.length} on file or not applicable`;
  return (
    <>
      <Section
        title="Still needed"
        id="requirements"
        foldedOnPhone={counted(missing.length, "item")}
        note={authority === null ? undefined : `${authority.name}, ${authority.office}.`}
      >
        {missing.length > 0 ? <Checks {...part} checks={missing} /> : null}
        {missing.length === 0 && checks.length > 0 ? <p>Nothing is missing.</p> : null}
        {checks.length === 0 ? (
          <Empty title="This authority has no requirements entered.">
            <p>
              Enter them once in the <Link href="/office">office pages</Link>, each with its source.
            </p>
          </Empty>
        ) : null}
      </Section>
      {settled.length === 0 ? null : (
        <Section title="Settled requirements" folded={words}>
          <Checks {...part} checks={settled} />
        </Section>
      )}
    </>
  );
}

function Checks({ checks, ...part }: ChecklistProps) {
  return (
    <ul className={`plain-list ${styles["checks"]}`}>
      {inOrder(checks).map((check) => (
        <li key={check.requirementId} className={styles["check"]}>
          <Check {...part} check={check} />
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
}: Omit<ChecklistProps, "checks"> & { readonly check: PacketCheck }) {
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
        {check.why === "" || check.why === check.sentence ? null : (
          <p className="muted small">{check.why}</p>
        )}
        {mark === undefined || mark.note === "" ? null : <p>“{mark.note}”</p>}
        <PaperLink lineId={lineId} file={file} uploadId={mark?.uploadId ?? null} words="Document" />
        {work ? (
          <details>
            <summary>Update status or add the document</summary>
            <ActionForm
              key={mark?.state ?? "unmarked"}
              action={markRequirementAction.bind(null, {
                lineId,
                requirementId: check.requirementId,
              })}
              label={`Update: ${check.title}`}
            >
              <SeenField value={seenOf(mark ?? null)} />
              <div className="form-grid">
                <Choice
                  label="Status"
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
                <Upload
                  lineId={lineId}
                  name="uploadId"
                  label="Document"
                  {...storedOf(file, mark)}
                />
              </div>
              <div>
                <SubmitButton pendingWord="Saving…" quiet>
                  Save
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
