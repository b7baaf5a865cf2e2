import { ImapFlow } from "imapflow";
import type { ImapSettings } from "#lib/env.ts";

/** Up to where a mailbox was read: a server that numbers its messages anew has another `validity`. */
export interface MailboxPlace {
  readonly validity: string;
  readonly uid: number;
}

/** A message as the server keeps it; null where it is larger than what is read. */
export interface FetchedMail {
  readonly uid: number;
  readonly source: Uint8Array | null;
}

/** A message with its files may be larger; a report or an answer is not. */
const LARGEST = 10_000_000;

/** How many days back a mailbox is read that was never read before. */
const FIRST_DAYS = 30;

/**
 * Reads what came into a mailbox after a place in it, one message after the other, and hands each on
 * with its own place. The mailbox is opened for reading only: nothing in it is marked, moved or removed.
 * Throws where the server can't be reached or does not let us in.
 */
export async function readMailbox(
  imap: ImapSettings,
  { from, now }: { readonly from: MailboxPlace | null; readonly now: Date },
  take: (mail: FetchedMail, place: MailboxPlace) => Promise<void>,
): Promise<void> {
  const client = connection(imap);
  await client.connect();
  try {
    const mailbox = await client.mailboxOpen(imap.folder, { readOnly: true });
    const validity = String(mailbox.uidValidity);
    const after = from !== null && from.validity === validity ? from.uid : null;
    for (const uid of await newUids(client, after, now)) {
      const mail = await client.fetchOne(String(uid), { size: true }, { uid: true });
      const small = mail !== false && (mail.size ?? 0) <= LARGEST;
      const whole = small
        ? await client.fetchOne(String(uid), { source: true }, { uid: true })
        : false;
      const source = whole === false ? null : (whole.source ?? null);
      await take({ uid, source }, { validity, uid });
    }
  } finally {
    await client.logout().catch(() => client.close());
  }
}

/** How many messages are there: shows that the settings work. */
export async function countMailbox(imap: ImapSettings): Promise<number> {
  const client = connection(imap);
  await client.connect();
  try {
    return (await client.mailboxOpen(imap.folder, { readOnly: true })).exists;
  } finally {
    await client.logout().catch(() => client.close());
  }
}

function connection({ host, port, user, password }: ImapSettings): ImapFlow {
  const client = new ImapFlow({
    host,
    port,
    secure: port === 993,
    auth: { user, pass: password },
    logger: false,
    connectionTimeout: 20_000,
    greetingTimeout: 20_000,
    socketTimeout: 60_000,
  });
  // Said by whatever waits for an answer; without a listener it would end the process.
  client.on("error", () => {});
  return client;
}

async function newUids(client: ImapFlow, after: number | null, now: Date): Promise<number[]> {
  const since = new Date(now.getTime() - FIRST_DAYS * 86_400_000);
  const query = after === null ? { since } : { uid: `${after + 1}:*` };
  const found = await client.search(query, { uid: true });
  // `5:*` names the last message even where that is the fourth.
  const uids = found === false || found === undefined ? [] : found;
  return uids.filter((uid) => uid > (after ?? 0)).sort((one, other) => one - other);
}
