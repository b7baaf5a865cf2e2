import { insertRow } from "#db/queries/row.ts";
import {
  CALL_OUTCOMES,
  CALL_PURPOSES,
  type CallOutcome,
  type CallPurpose,
  type HouseholdCall,
} from "#lib/domain/facts/household-call.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { PURPOSE_WORDS } from "./call-first.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";

interface CallWord {
  readonly lineId: string;
  readonly partyId: string;
  readonly propertyId: string;
  readonly purpose: CallPurpose;
  /** The day that was spoken about. */
  readonly forDay: Day;
  readonly outcome: CallOutcome;
  /** What was agreed, or what was said; not needed where nobody answered. */
  readonly words: string;
  readonly calledBy: string;
  readonly calledOn: Day;
}

/**
 * Records one call to a household before its drains are paused or it is visited for a test: who called, when,
 * for which day, and what was agreed. Calls are added, never changed; the latest one for a purpose
 * and day counts. Refuses a party that is not at the property, no caller, an agreement without its
 * words, a call to come, and a day before the call.
 */
export function recordHouseholdCall(
  act: Act,
  { lineId, ...word }: CallWord,
): Result<{ callId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "record-household-call" } as const;
  return changeLine(act, deal, (file) => {
    const { partyId, propertyId } = word;
    const party = find(file.parties, partyId, { path: "partyId", what: "the party" });
    if (!party.ok) return party;
    const lives = file.roles.some(
      (role) => role.partyId === partyId && role.propertyId === propertyId,
    );
    if (!lives)
      return refuse("bad-value", "propertyId", `${party.value.name} has no role at that property`);
    const wrong = wrongWord(act, word);
    if (wrong !== null) return wrong;
    const call: HouseholdCall = {
      id: act.newId(),
      ...word,
      words: word.words.trim(),
      calledBy: word.calledBy.trim(),
      needs: party.value.needs,
    };
    const what = PURPOSE_WORDS[call.purpose];
    const said = call.words === "" ? "." : `: ${call.words}`;
    return ok({
      value: { callId: call.id },
      sentence: `${call.calledBy} called ${nameRow(file, "parties", partyId).replace(/^party /, "")} about ${what} on ${formatDate(call.forDay)} (${call.outcome.replaceAll("-", " ")})${said}`,
      detail: { after: call },
      write: (db) => insertRow(db, "householdCalls", { lineId, row: call }),
    });
  });
}

function wrongWord(act: Act, word: Omit<CallWord, "lineId">) {
  if (!CALL_PURPOSES.includes(word.purpose))
    return refuse("bad-value", "purpose", "Choose what the call was about");
  if (!CALL_OUTCOMES.includes(word.outcome))
    return refuse("bad-value", "outcome", "Choose how the call ended");
  if (!isDay(word.forDay)) return refuse("bad-value", "forDay", "Enter a date as 11/25/2026");
  if (word.calledBy.trim() === "") return refuse("missing-value", "calledBy", "Enter who called");
  if (word.outcome !== "not-reached" && word.words.trim() === "")
    return refuse("missing-value", "words", "Enter what was agreed or said");
  if (word.forDay < word.calledOn)
    return refuse("bad-value", "forDay", "The call has to come before the day that it is about");
  return pastDay(act, { day: word.calledOn, path: "calledOn" });
}
