import { z } from "zod";
import type { Office } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import type { Party } from "#lib/domain/facts/party.ts";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import type { Act } from "./act.ts";

const Address = z.email().max(254);

/** Where the secret of a private link goes in a message that waits; it is filled in when it is sent. */
export const SECRET_GAP = "[[the secret of this link]]";

/** Why a party can't be written to by mail message; null where they can. */
export function wrongAddress(party: Party | undefined): string | null {
  if (party && Address.safeParse(party.email).success) return null;
  const name = party?.name ?? "this party";
  if (!party || party.email === "")
    return `No email address on file for ${name}; enter one, or send the letter another way`;
  return `“${party.email}” is not a valid email address; correct it for ${name}, or send the letter another way`;
}

/** The message that carries a letter; its Message-ID stays the same over all tries. */
export function outgoingOf(
  act: Act,
  {
    lineId,
    letter,
    delivery,
    party,
    office,
    above = "",
  }: {
    lineId: string;
    letter: Letter;
    delivery: Delivery;
    party: Party;
    office: Office;
    /** Words that stand before the letter's own, say its private link. */
    above?: string;
  },
): Outgoing {
  const subjects = [letter.subject, ...(letter.also === undefined ? [] : [letter.also.subject])];
  return waitingMessage(act, {
    ...{ lineId, office, party, noticeId: delivery.noticeId, deliveryId: delivery.id },
    entryId: null,
    subject: subjects.join(" / "),
    text: above === "" ? letterText(letter) : `${above}\n\n${letterText(letter)}`,
  });
}

type Message = Pick<
  Outgoing,
  "lineId" | "noticeId" | "deliveryId" | "entryId" | "subject" | "text"
> & { readonly office: Office; readonly party: Party };

/** A message to a party that waits in the outbox from now on. */
export function waitingMessage(act: Act, { office, party, ...message }: Message): Outgoing {
  const id = act.newId();
  return {
    ...message,
    id,
    uploadId: null,
    toAddress: party.email,
    toName: party.name,
    messageId: messageIdOf(id, office),
    state: "waiting",
    attempts: 0,
    nextTryAt: act.now,
    problem: "",
    createdAt: act.now,
    sentAt: null,
  };
}

/** The Message-ID of the message with this id: the same for every try. */
export function messageIdOf(id: string, { email }: Pick<Office, "email">): string {
  return `<${id.replace(/[^A-Za-z0-9.-]/g, "-")}@${domainOf(email)}>`;
}

function domainOf(address: string): string {
  const domain = address.split("@").at(1) ?? "";
  return /^[A-Za-z0-9.-]+$/.test(domain) ? domain : "wyebook.invalid";
}
