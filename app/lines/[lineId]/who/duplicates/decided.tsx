import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { undoSamePartyAction } from "./actions.ts";

/** What was said of pairs so far, with who said it; each can be taken back. */
export function DecidedPairs({
  lineId,
  file,
  work,
}: {
  readonly lineId: string;
  /** As it is kept: with those who were merged. */
  readonly file: LineFile;
  readonly work: boolean;
}) {
  const nameOf = (id: string) => file.parties.find((party) => party.id === id)?.name ?? "";
  return (
    <ul className="stack-tight">
      {file.sameParties.map(({ id, partyId, intoId, same, by, on, reason }) => (
        <li key={id}>
          <span className="strong">{nameOf(partyId)}</span>{" "}
          {same ? "is the same as" : "is someone else than"}{" "}
          <span className="strong">{nameOf(intoId)}</span>
          {reason === "" ? "" : `: ${reason}`}{" "}
          <span className="muted">
            {by}, {formatDate(on)}
          </span>
          {work ? (
            <ActionForm
              action={undoSamePartyAction.bind(null, { lineId, wordId: id })}
              className="cluster screen-only"
              label={`Undo: ${nameOf(partyId)}`}
            >
              <SubmitButton quiet pendingWord="Undoing …">
                {same ? "Undo merge" : "Ask again"}
              </SubmitButton>
            </ActionForm>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
