import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { cardWords, isCardMissing } from "#lib/domain/application/posted-card.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import { cardSeen } from "#lib/operations/post-card.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { postCardAction } from "./actions.ts";

/** One permit of a line, as it stands today. */
export interface PermitProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly permit: Permit;
  readonly today: string;
  readonly work: boolean;
}

/** Since when the permit’s card hangs on site, and where; that it does not, once it should. */
export function Card({ lineId, file, permit, today, work }: PermitProps) {
  const words = cardWords(file, permit, today);
  if (words === null) return null;
  const missing = isCardMissing(file, permit);
  return (
    <>
      <p className={missing ? "strong" : undefined}>{words}.</p>
      {work ? (
        <details className="screen-only">
          <summary>{missing ? "Record the posted card" : "Correct the posted card"}</summary>
          <ActionForm
            key={`${permit.postedOn} ${permit.postedBy} ${permit.postedPlace}`}
            className="stack"
            action={postCardAction.bind(null, { lineId, permitId: permit.id })}
            label={`Posted card of the permit ${permit.number}`.trim()}
          >
            <SeenField value={seenOf(cardSeen(permit))} />
            <CardFields permit={permit} />
            <div>
              <SubmitButton pendingWord="Saving…" quiet>
                Save posted card
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}

/** Day, person and place of posting; all may be left blank. */
export function CardFields({ permit }: { readonly permit?: Permit }) {
  return (
    <div className="form-grid">
      <Field
        label="Card posted on"
        name="postedOn"
        type="date"
        defaultValue={permit?.postedOn ?? ""}
      />
      <Field
        label="Posted by"
        name="postedBy"
        defaultValue={permit?.postedBy ?? ""}
        example="Sami Orlov"
      />
      <Field
        label="Posted where"
        name="postedPlace"
        defaultValue={permit?.postedPlace ?? ""}
        example="On the fence at 14 Fennel Row"
      />
    </div>
  );
}
