import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import { isKeeper, type User } from "#lib/domain/facts/user.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { keepLineAction, saveLineAction } from "./actions.ts";
import { CloseForm } from "./close-form.tsx";

/** `96.0 ft, concrete, 6 in`. */
export function pipeWords({ line }: Pick<LineFile, "line">): string {
  return [
    line.upperEnd === null ? "" : formatFeet(line.upperEnd),
    line.material === "unknown" ? "" : MATERIAL_WORDS[line.material],
    line.diameter === null ? "" : `${line.diameter} in`,
    line.closedOn === null ? "edit, export, close the file" : "export, reopen the file",
  ]
    .filter((part) => part !== "")
    .join(", ");
}

/** The facts of the pipe itself, and what is done with the file as a whole. */
export function AboutLine({
  file,
  today,
  may,
  keeper,
  users,
}: {
  readonly file: LineFile;
  readonly today: string;
  readonly may: boolean;
  /** Who looks after it, by id; null: nobody. */
  readonly keeper: string | null;
  readonly users: readonly User[];
}) {
  const { line } = file;
  const kept = users.find(({ id }) => id === keeper);
  return (
    <div className="stack">
      <dl className="facts">
        <dt>Handled by</dt>
        <dd>{kept?.name ?? "no one"}</dd>
        <dt>Upper end of the shared line</dt>
        <dd>{line.upperEnd === null ? "unknown" : formatFeet(line.upperEnd)}</dd>
        <dt>At the main connection</dt>
        <dd>
          {MATERIAL_WORDS[line.material]}
          {line.diameter === null ? ", size unknown" : `, ${line.diameter} in`}
        </dd>
        <dt>Location on the public main</dt>
        <dd>
          {line.mainStation === null
            ? "unknown"
            : `${formatFeet(line.mainStation)} ${line.mainNote}`.trim()}
        </dd>
        {line.note === "" ? null : (
          <>
            <dt>Note</dt>
            <dd className="prewrap">{line.note}</dd>
          </>
        )}
      </dl>
      <p className="screen-only">
        <a href={`/lines/${line.id}/export`} download>
          Export this line
        </a>{" "}
        <span className="muted">as a line file (can be imported into another Wyebook office)</span>
      </p>
      {may ? (
        <div className="stack screen-only">
          <KeeperForm lineId={line.id} keeper={keeper} users={users.filter(isKeeper)} />
          <LineForms file={file} today={today} />
        </div>
      ) : null}
    </div>
  );
}

function LineForms({ file, today }: { readonly file: LineFile; readonly today: string }) {
  return (
    <>
      {file.line.closedOn === null ? <FactsForm file={file} /> : null}
      <details id="close">
        <summary>{file.line.closedOn === null ? "Close the file" : "Reopen the file"}</summary>
        <CloseForm file={file} today={today} />
      </details>
    </>
  );
}

/** Whose desk shows the line under “Mine”. */
function KeeperForm({
  lineId,
  keeper,
  users,
}: {
  readonly lineId: string;
  readonly keeper: string | null;
  readonly users: readonly User[];
}) {
  return (
    <details>
      <summary>Change who handles it</summary>
      <ActionForm action={keepLineAction.bind(null, lineId)} label="Handled by">
        <SeenField value={seenOf(keeper)} />
        <Choice
          label="Handled by"
          name="userId"
          defaultValue={keeper ?? ""}
          options={[
            { value: "", label: "No one" },
            ...users.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          hint="They find the line on the desk under Mine."
        />
        <div>
          <SubmitButton pendingWord="Saving …">Save</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

const ABOUT = [
  ...(["name", "town", "upperEnd", "material", "diameter"] as const),
  ...(["mainStation", "mainNote", "note"] as const),
];

function FactsForm({ file }: { readonly file: LineFile }) {
  const { line } = file;
  return (
    <details>
      <summary>Edit</summary>
      <ActionForm
        action={saveLineAction.bind(null, line.id)}
        label="Line details"
        className="stack"
      >
        <SeenField value={seenOf(lineSeen(line, ABOUT))} />
        <div className="form-grid">
          <Field label="Name" name="name" defaultValue={line.name} required />
          <Field label="Town" name="town" defaultValue={line.town} />
          <Field
            label="Upper end of the shared line"
            name="upperEnd"
            unit="ft"
            width={8}
            defaultValue={line.upperEnd === null ? "" : plainFeet(line.upperEnd)}
            hint="From the main connection. Leave blank if unknown."
          />
          <Choice
            label="Material at the main connection"
            name="material"
            defaultValue={line.material}
            options={MATERIALS.map((value) => ({ value, label: MATERIAL_WORDS[value] }))}
          />
          <Field
            label="Inside diameter"
            name="diameter"
            unit="in"
            width={6}
            defaultValue={line.diameter ?? ""}
          />
          <Field
            label="Main station"
            name="mainStation"
            unit="ft"
            width={8}
            defaultValue={line.mainStation === null ? "" : plainFeet(line.mainStation)}
            hint="Distance along the public main from its downstream manhole (not a station on this line)"
          />
          <Field
            label="Measured from"
            name="mainNote"
            defaultValue={line.mainNote}
            example="manhole QH-114"
          />
        </div>
        <Field label="Note" name="note" rows={3} defaultValue={line.note} />
        <div>
          <SubmitButton pendingWord="Saving …">Save</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}
