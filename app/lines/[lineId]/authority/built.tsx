import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import { unbuiltWork } from "#lib/domain/closing/as-built.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { isOnPipe } from "#lib/domain/split/work-deeds.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { PaperLink } from "../notices/paper-link.tsx";
import { recordBuiltAction } from "./actions.ts";

interface BuiltProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly may: boolean;
}

/** What was done of the work in force, on whose word; the whole job on an as-built. */
export function Built({ lineId, file, today, may }: BuiltProps) {
  const work = scopeInForce(file).filter((item) => isOnPipe(item, file));
  const missing = new Set(unbuiltWork(file).map(({ id }) => id));
  if (work.length === 0)
    return (
      <Empty title="No work on the pipe is priced.">
        <p>
          Price it first, under <a href={`/lines/${lineId}/cost`}>What does it cost?</a>
        </p>
      </Empty>
    );
  return (
    <div className="stack">
      <ul className="plain-list">
        {[...work.map(({ id, title }) => ({ id, title })), WHOLE].map(({ id, title }) => {
          const built = file.built.find(({ itemId }) => itemId === id);
          return (
            <li key={id ?? "whole"} className="stack-tight">
              <h3>
                {title}{" "}
                {id !== null && missing.has(id) ? <span className="tag">not recorded</span> : null}
              </h3>
              {built === undefined ? null : (
                <p>
                  Done {formatDay(built.on, today)}, per {built.by}.{" "}
                  {built.words === "" ? null : built.words}{" "}
                  <PaperLink
                    lineId={lineId}
                    file={file}
                    uploadId={built.uploadId}
                    words="As-built"
                  />
                </p>
              )}
              {may ? (
                <details className="screen-only">
                  <summary>{built === undefined ? "Record as done" : "Correct"}</summary>
                  <BuiltForm {...{ lineId, file, today }} itemId={id} title={title} />
                </details>
              ) : null}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

const WHOLE = { id: null, title: "The whole job, as on an as-built drawing" };

function BuiltForm({
  lineId,
  file,
  today,
  itemId,
  title,
}: Omit<BuiltProps, "may"> & { readonly itemId: string | null; readonly title: string }) {
  const built = file.built.find((each) => each.itemId === itemId);
  const upload = file.uploads.find(({ id }) => id === built?.uploadId);
  const stored = upload === undefined ? {} : { stored: { id: upload.id, name: upload.name } };
  return (
    <ActionForm
      key={`${built?.on} ${built?.words}`}
      className="stack"
      action={recordBuiltAction.bind(null, { lineId, itemId })}
      label={`What was built: ${title}`}
    >
      <SeenField value={seenOf(built ?? null)} />
      <div className="form-grid">
        <Field label="Done on" name="on" type="date" required defaultValue={built?.on ?? today} />
        <Field
          label="Reported by"
          name="by"
          required
          defaultValue={built?.by}
          example="Marek Łódź"
        />
        <Upload lineId={lineId} name="uploadId" label="As-built or photo" {...stored} />
      </div>
      <Field
        label="What was built"
        name="words"
        rows={2}
        defaultValue={built?.words}
        hint="Include where it differs from what was priced."
        example="6 in PVC, 14.0 to 22.5 ft, T1 joined with a wye"
      />
      <div>
        <SubmitButton pendingWord="Saving…" quiet>
          Save
        </SubmitButton>
      </div>
    </ActionForm>
  );
}
