import { getKeptFile } from "#db/queries/line-file.ts";
import { countSave } from "#db/queries/revision.ts";
import { insertRow, removeRow } from "#db/queries/row.ts";
import type { Party, SameParty } from "#lib/domain/facts/party.ts";
import { keptParty } from "#lib/domain/party/as-one.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { type Change, changeLine, find, refuse } from "./change.ts";

interface Judging {
  readonly lineId: string;
  /** The party that is read as the other from now on. */
  readonly partyId: string;
  readonly intoId: string;
  /** False: they are two, and not asked about again. */
  readonly same: boolean;
  readonly reason: string;
}

/**
 * Says of two parties that they are one, or that they are two. Where they are one, what names the
 * first is read as the other's and not rewritten: letters, consents, signatures and money stay as
 * they were recorded, and `undoSameParty` brings both back. Refuses one with itself, a party that
 * is another one already, and a pair that was decided on.
 */
export function judgeParties(act: Act, judging: Judging): Result<{ wordId: string }, Refusal> {
  const { lineId, partyId } = judging;
  const deal = { lineId, deed: "work-the-file", action: "judge-parties" } as const;
  return changeLine(act, deal, (_read, db): Result<Change<{ wordId: string }>, Refusal> => {
    const file = getKeptFile(db, lineId);
    if (file === null) return refuse("not-found", "lineId", "the line");
    const gone = find(file.parties, partyId, { path: "partyId", what: "the party" });
    if (!gone.ok) return gone;
    const intoId = keptParty(file.sameParties, judging.intoId);
    const into = find(file.parties, intoId, { path: "intoId", what: "the party" });
    if (!into.ok) return into;
    const wrong = wrongPair(file.sameParties, gone.value, into.value);
    if (wrong !== null) return wrong;
    const word: SameParty = {
      id: act.newId(),
      partyId,
      intoId,
      same: judging.same,
      by: act.actor.name,
      on: act.today,
      reason: judging.reason.trim(),
    };
    return ok({
      value: { wordId: word.id },
      sentence: sentenceOf(word, gone.value, into.value),
      detail: { added: [word], parties: [gone.value, into.value] },
      write: (one) => {
        insertRow(one, "sameParties", { lineId, row: word });
        countPeople({ ...act, db: one }, lineId);
      },
    });
  });
}

function wrongPair(words: readonly SameParty[], gone: Party, into: Party) {
  if (gone.id === into.id) return refuse("bad-value", "intoId", "Choose two different people");
  if (keptParty(words, gone.id) !== gone.id)
    return refuse("not-in-this-state", "partyId", `${gone.name} was merged already`);
  const said = words.some(
    ({ partyId, intoId }) =>
      (partyId === gone.id && intoId === into.id) || (partyId === into.id && intoId === gone.id),
  );
  return said
    ? refuse("not-in-this-state", "partyId", "This was decided already; undo that first")
    : null;
}

function sentenceOf({ same, reason }: SameParty, gone: Party, into: Party): string {
  const why = reason === "" ? "" : `, because: ${reason}`;
  return same
    ? `${gone.name} is the same party as ${into.name}${why}.`
    : `${gone.name} and ${into.name} are two parties${why}.`;
}

/** Takes a word on two parties back: both stand as before, and may be asked about again. */
export function undoSameParty(
  act: Act,
  { lineId, wordId }: { readonly lineId: string; readonly wordId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "undo-same-party" } as const;
  return changeLine(act, deal, (_read, db): Result<Change<null>, Refusal> => {
    const file = getKeptFile(db, lineId);
    if (file === null) return refuse("not-found", "lineId", "the line");
    const word = find(file.sameParties, wordId, { path: "wordId", what: "the merge" });
    if (!word.ok) return word;
    const nameOf = (id: string) => file.parties.find((party) => party.id === id)?.name ?? id;
    const names = `${nameOf(word.value.partyId)} and ${nameOf(word.value.intoId)}`;
    return ok({
      value: null,
      sentence: word.value.same
        ? `Merge undone: ${names} are two parties again.`
        : `Undone: ${names} may be one party.`,
      detail: { removed: [word.value] },
      write: (one) => {
        removeRow(one, "sameParties", { lineId, id: wordId });
        countPeople({ ...act, db: one }, lineId);
      },
    });
  });
}

/** A list of people that is open elsewhere shows other rows than before: saving it is refused. */
function countPeople({ db, actor, now }: Act, lineId: string): void {
  countSave(db, { lineId, table: "parties", by: actor.name, at: now });
}
