import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, Notice } from "../facts/notice.ts";
import { answerOf } from "../notices/answered.ts";
import { ARRIVAL_RULES, type Arrival, arrivalOf, attemptProves } from "../notices/arrival.ts";
import { paragraph, table } from "../paper/common.ts";
import { LETTER_PLANS } from "../paper/kinds/index.ts";
import { EN } from "../paper/words-en.ts";
import { DELIVERY_WORDS } from "./notice-state.ts";
import type { Sheet } from "./packet.ts";
import { composed } from "./sheets-job.ts";

/** Every attempt to deliver every letter, and what shows that it arrived. */
export function noticeSheet({ file }: { readonly file: LineFile }): Sheet {
  const rows = file.notices
    .filter(({ state }) => state === "sent")
    .flatMap((notice) => rowsOf(file, notice));
  return composed(
    "proof-of-notice",
    "Proof of notice",
    rows.length === 0
      ? [paragraph("No letter has been sent yet.")]
      : table(["Letter", "Sent", "Proof of delivery"], rows),
  );
}

function rowsOf(file: LineFile, notice: Notice): string[][] {
  const party = file.parties.find(({ id }) => id === notice.partyId);
  const letter = `${LETTER_PLANS[notice.kind].title.en}, to ${party?.name ?? "unknown"}`;
  const arrival = arrivalOf(file, notice);
  const attempts = file.deliveries.filter(({ noticeId }) => noticeId === notice.id);
  if (attempts.length === 0)
    return [[letter, "no attempt on file", wordOf(file, notice, arrival) ?? "nothing"]];
  return attempts.map((attempt, at) => [
    letter,
    wentWords(attempt),
    (at === attempts.length - 1 ? wordOf(file, notice, arrival) : null) ?? becameWords(attempt),
  ]);
}

function wentWords({ method, sentOn, tracking }: Delivery): string {
  const number = isPostal(method) && tracking !== "" ? `, No. ${tracking}` : "";
  return `${DELIVERY_WORDS[method]}, ${EN.day(sentOn)}${number}`;
}

/** A mail server's own name for a message is no tracking number. */
function isPostal(method: DeliveryMethod): boolean {
  return method === "certified" || method === "first-class";
}

/** What a letter's party said to it, where that is what shows its arrival. */
function wordOf(file: LineFile, notice: Notice, { on, by }: Arrival): string | null {
  if (on === null || (by !== "answer" && by !== "signature")) return null;
  const { reply } = answerOf(file, notice);
  if (by === "signature" || reply === null) return `arrived: they signed ${EN.day(on)}`;
  return `arrived: they answered ${EN.day(on)}`;
}

function becameWords(attempt: Delivery): string {
  const { method, outcome, outcomeOn, sentOn, by } = attempt;
  const proof = attemptProves(attempt);
  const day = EN.day(outcomeOn ?? sentOn);
  if (proof === "handed-over") return `arrived ${day}, handed over by ${by}`;
  if (proof === "receipt")
    return `arrived ${day}, by its ${attempt.tracking === "" ? "receipt" : "tracking number"}`;
  if (outcome === "returned") return `returned ${day}`;
  if (outcome === "unclaimed") return `not collected ${day}`;
  if (outcome === "failed") return `failed ${day}`;
  if (ARRIVAL_RULES[method].stands === "mailed") return "mailed; no proof of delivery";
  if (ARRIVAL_RULES[method].stands === "left") return "posted; no proof of receipt";
  if (outcome === "delivered") return `reported delivered ${day}; no proof`;
  return "in transit";
}
