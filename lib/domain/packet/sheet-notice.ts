import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, Notice } from "../facts/notice.ts";
import { answerOf } from "../notices/answered.ts";
import { type Arrival, arrivalOf } from "../notices/arrival.ts";
import { ARRIVAL_RULES, type AttemptProof, proofUnder, wayRule } from "../notices/way-rule.ts";
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
    (at === attempts.length - 1 ? wordOf(file, notice, arrival) : null) ??
      becameWords(file, notice, attempt),
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

function becameWords(file: LineFile, { kind }: Notice, attempt: Delivery): string {
  const { method, outcome, outcomeOn, sentOn } = attempt;
  const rule = wayRule(file, kind, method);
  const proof = proofUnder(rule, attempt);
  const source = rule.rows.flatMap(({ citation }) => (citation === "" ? [] : citation)).join("; ");
  if (proof !== null) {
    const day = EN.day(proof.on);
    if (proof.by === "handed-over" || proof.by === "receipt") return shownWords(attempt, proof);
    return `${COUNTS[proof.by]}; counts as delivered ${day} (${source})`;
  }
  const day = EN.day(outcomeOn ?? sentOn);
  const house = proofUnder({ counts: [ARRIVAL_RULES[method].counts] }, attempt);
  if (house !== null)
    return `${shownWords(attempt, house)}; not enough for this authority (${source})`;
  if (outcome === "returned") return `returned ${day}`;
  if (outcome === "unclaimed") return `not collected ${day}`;
  if (outcome === "failed") return `failed ${day}`;
  if (rule.stands === "mailed")
    return `${method === "mail-message" ? "sent" : "mailed"}; no proof of delivery`;
  if (rule.stands === "left") return "posted; no proof of receipt";
  if (outcome === "delivered") return `reported delivered ${day}; no proof`;
  return "in transit";
}

const COUNTS = {
  attempted: "offered, not collected",
  photo: "posted, with a photo",
  sent: "sent, did not come back",
} as const;

/** What shows that a letter was taken. */
function shownWords({ by, tracking }: Delivery, proof: AttemptProof): string {
  const day = EN.day(proof.on);
  if (proof.by === "handed-over") return `arrived ${day}, handed over by ${by}`;
  return `arrived ${day}, by its ${tracking === "" ? "receipt" : "tracking number"}`;
}
