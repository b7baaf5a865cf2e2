import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { HOUSE_WORDING, type Wording } from "#lib/domain/facts/wording.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { dayOf } from "#lib/domain/time/moment.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { useWordingAction } from "../actions.ts";

/** Every version, the newest first, and the house's own; one press puts one into use. */
export function Versions({
  at,
  versions,
  inUse,
  may,
  zone,
}: {
  readonly at: { readonly kind: LetterKind; readonly language: Language };
  readonly versions: readonly Wording[];
  readonly inUse: number;
  readonly may: boolean;
  readonly zone: string;
}) {
  const all = [
    ...versions.toReversed().map(({ version, savedBy, savedAt }) => ({
      version,
      words: `Version ${version}, ${savedBy}, ${formatDate(dayOf(savedAt, zone))}`,
    })),
    { version: HOUSE_WORDING, words: "The house wording" },
  ];
  return (
    <ul className="plain-list stack-tight">
      {all.map(({ version, words }) => (
        <li key={version} className="cluster">
          <span>{words}</span>
          {version === inUse ? <span className="tag">in use</span> : null}
          {version === inUse || !may ? null : (
            <ActionForm action={useWordingAction.bind(null, at)} label={`Use: ${words}`}>
              <input type="hidden" name="version" value={version} />
              <SeenField value={seenOf(inUse)} />
              <SubmitButton pendingWord="Changing …">
                {version === HOUSE_WORDING ? "Back to the house wording" : `Use version ${version}`}
              </SubmitButton>
            </ActionForm>
          )}
        </li>
      ))}
    </ul>
  );
}
