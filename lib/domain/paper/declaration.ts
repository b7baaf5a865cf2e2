import type { LineFile, Office } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, Notice } from "../facts/notice.ts";
import { hasReceipt } from "../notices/way-rule.ts";
import { addressLines } from "../party/address.ts";
import { sayParty } from "../party/say.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { frozenLetter } from "./frozen-letter.ts";
import { LETTER_PLANS } from "./kinds/index.ts";

/** What one person did to bring letters, for that person to sign on paper. */
export interface Declaration {
  /** Who signs: the person who did it. */
  readonly by: string;
  readonly day: Day;
  readonly title: string;
  /** The office and the line that it is about. */
  readonly about: readonly string[];
  readonly opening: string;
  readonly acts: readonly DeclaredAct[];
  readonly after: readonly string[];
  /** Boxes that the signer checks by hand. */
  readonly boxes: readonly string[];
  readonly oath: string;
  readonly exhibits: readonly Exhibit[];
}

/** One thing that was done. */
export interface DeclaredAct {
  readonly number: number;
  readonly when: string;
  readonly what: string;
  /** To whom: the name and address on the letter. */
  readonly to: readonly string[];
  /** Which letter, and the ID under which it can be told from every other. */
  readonly letter: string;
  readonly id: string;
  /** What became of it, as far as it is on file. */
  readonly became: string;
  /** `A`, where a paper or photo of it is attached. */
  readonly exhibit: string;
}

/** A photo or receipt that is attached. */
export interface Exhibit {
  readonly letter: string;
  readonly uploadId: string;
  readonly name: string;
  readonly sha256: string;
  /** The numbers of the acts that it is proof of. */
  readonly acts: readonly number[];
}

const BLANK = "____________________";

interface Facts {
  readonly file: Pick<LineFile, "line" | "notices" | "deliveries" | "parties" | "uploads">;
  readonly office: Office;
  readonly today: Day;
}

/**
 * A declaration for each person who did one of these deliveries: what was done, by whom, when, how and
 * to whom, with the proofs that are attached. It says what is on file and nothing else: what nobody
 * entered is a blank line to be filled in by hand, what came back is said, and an email that has not
 * gone out yet is left out.
 */
export function declarationsOf(facts: Facts, deliveryIds: readonly string[]): Declaration[] {
  const { deliveries } = facts.file;
  const asked = deliveryIds.flatMap((id) => deliveries.find((each) => each.id === id) ?? []);
  const done = asked.filter(isDeclarable);
  return [...new Set(done.map(({ by }) => by))].map((by) =>
    declarationBy(
      facts,
      by,
      done
        .filter((each) => each.by === by)
        .toSorted((one, other) => whenKey(one).localeCompare(whenKey(other))),
    ),
  );
}

/**
 * Whether there is something done that a person can declare: an email in the outbox is not sent yet, and
 * one that a server refused or gave back delivered nothing.
 */
export function isDeclarable({ method, tracking, outcome }: Delivery): boolean {
  return method !== "mail-message" || (tracking !== "" && outcome !== "failed");
}

function whenKey({ sentOn, at }: Delivery): string {
  return `${sentOn} ${at}`;
}

function declarationBy(facts: Facts, by: string, done: readonly Delivery[]): Declaration {
  const { file, office, today } = facts;
  const exhibits = exhibitsOf(file, done);
  return {
    by,
    day: today,
    title: "Declaration of delivery",
    about: [`${file.line.name}, ${file.line.town}`, office.name, ...addressLines(office.address)],
    opening: `I, ${by}, delivered the letters below for ${office.name}, each in the way and on the date written beside it.`,
    acts: done.map((delivery, at) => actOf(facts, { delivery, number: at + 1, exhibits })),
    after: [
      "The ID of a letter is the SHA-256 fingerprint of its text as it was sent. Who has the file can check that the letter is unchanged.",
      ...(exhibits.length === 0
        ? []
        : ["The attached exhibits are true copies of the receipts and photos that they name."]),
    ],
    boxes: [
      "I am at least 18 years old.",
      "I own no property on this line and have no share in its cost.",
    ],
    oath: `I declare under penalty of perjury under the laws of the State of ${BLANK} that the above is true and correct.`,
    exhibits,
  };
}

function exhibitsOf({ uploads }: Facts["file"], done: readonly Delivery[]): Exhibit[] {
  const ids = [...new Set(done.flatMap(({ proofUploadId }) => proofUploadId ?? []))];
  const stored = ids.flatMap((id) => uploads.find((each) => each.id === id) ?? []);
  return stored.map(({ id, name, sha256 }, at) => ({
    letter: exhibitLetter(at),
    uploadId: id,
    name,
    sha256,
    acts: done.flatMap(({ proofUploadId }, act) => (proofUploadId === id ? [act + 1] : [])),
  }));
}

/** A to Z, then AA. */
function exhibitLetter(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : `${exhibitLetter(Math.floor(at / 26) - 1)}${last}`;
}

interface Acting {
  readonly delivery: Delivery;
  readonly number: number;
  readonly exhibits: readonly Exhibit[];
}

function actOf({ file }: Facts, { delivery, number, exhibits }: Acting): DeclaredAct {
  const notice = file.notices.find(({ id }) => id === delivery.noticeId);
  const time = delivery.at === "" ? "" : `, ${formatTime(delivery.at)}`;
  return {
    number,
    when: `${formatDate(delivery.sentOn)}${time}`,
    what: DONE[delivery.method](delivery),
    to: addressedTo(file, notice),
    letter: notice === undefined ? BLANK : LETTER_PLANS[notice.kind].title.en,
    id: notice?.frozenHash ?? "",
    became: becameWords(delivery),
    exhibit: exhibits.find(({ acts }) => acts.includes(number))?.letter ?? "",
  };
}

/** The name and address as the letter had them. */
function addressedTo(file: Facts["file"], notice: Notice | undefined): readonly string[] {
  if (notice === undefined) return [BLANK];
  const letter = notice.frozen === null ? null : frozenLetter(notice.frozen);
  return letter?.to ?? [sayParty(file, notice.partyId)];
}

/** What was done, in the words of the one who did it. */
const DONE: Record<DeliveryMethod, (delivery: Delivery) => string> = {
  "first-class": () => "Mailed by first-class mail to the address beside.",
  certified: ({ tracking }) =>
    `Mailed by certified mail to the address beside, No. ${unbroken(tracking) || BLANK}.`,
  "mail-message": ({ tracking }) =>
    `Sent by email; the mail server took it. Message-ID ${tracking}.`,
  "by-hand": ({ handedTo, place }) =>
    `Handed over in person to ${handedTo || BLANK}. Place: ${place || BLANK}.`,
  posted: ({ place }) => `Posted at the site: ${place || BLANK}.`,
  "door-hanger": ({ place }) => `Left hanging on a door: ${place || BLANK}.`,
};

/** A number stays on one line, so that it can be compared digit by digit. */
function unbroken(number: string): string {
  return number.trim().replaceAll(/\s+/g, "\u00a0");
}

function becameWords(delivery: Delivery): string {
  const { outcome, outcomeOn, tracking } = delivery;
  const day = outcomeOn === null ? "" : ` ${formatDate(outcomeOn)}`;
  if (outcome === "returned") return `Came back${day}.`;
  if (outcome === "unclaimed") return `Not collected, came back${day}.`;
  if (outcome === "failed") return `Could not be delivered${day}.`;
  if (outcome !== "delivered") return "";
  if (hasReceipt(delivery))
    return `Delivered${day}, by its ${tracking === "" ? "receipt" : "tracking number"}.`;
  return `Reported as delivered${day}.`;
}
