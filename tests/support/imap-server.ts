import hoodiecrow from "hoodiecrow-imap";
import type { ImapSettings } from "#lib/env.ts";

/** A real IMAP server on loopback with one mailbox, until it is stopped. */
export async function startMailbox(messages: readonly string[] = []) {
  const server = hoodiecrow({
    plugins: ["ID", "AUTH-PLAIN", "ENABLE", "UIDPLUS", "LITERALPLUS"],
    users: { office: { password: "secret" } },
    storage: { INBOX: { messages: messages.map((raw) => ({ raw: asBytes(raw) })) } },
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("The mailbox has no port");
  const imap: ImapSettings = {
    ...{ host: "127.0.0.1", port: address.port, folder: "INBOX" },
    ...{ user: "office", password: "secret" },
  };
  const box = () => {
    const inbox = server.folderCache["INBOX"];
    if (inbox === undefined) throw new Error("The mailbox is gone");
    return inbox;
  };
  return {
    imap,
    stop: () => new Promise<void>((resolve) => server.close(() => resolve())),
    add: (raw: string) => server.appendMessage("INBOX", [], false, asBytes(raw)),
    /** As it is on the server. */
    kept: () => box().messages.map(({ flags, raw }) => ({ flags, raw })),
    /** The server numbers its messages anew. */
    renumber: () => {
      box().uidvalidity += 1;
    },
  };
}

/** The server keeps a message as one sign a byte. */
function asBytes(raw: string): string {
  return Buffer.from(raw, "utf8").toString("latin1");
}

interface Sent {
  readonly messageId: string;
  readonly to: string;
}

/** The report of a server that could not deliver a message (RFC 3464), as servers write it. */
export function aBounce({ messageId, to }: Sent, { action = "failed" } = {}): string {
  return [
    "From: Mail Delivery System <mailer-daemon@mx.example.org>",
    "To: office@example.com",
    "Subject: Undelivered Mail Returned to Sender",
    "Date: Wed, 25 Nov 2026 18:05:00 +0000",
    `Message-ID: <bounce-${messageId.slice(1, 9)}-${action}@mx.example.org>`,
    "Auto-Submitted: auto-replied",
    "MIME-Version: 1.0",
    'Content-Type: multipart/report; report-type=delivery-status; boundary="edge"',
    "",
    "--edge",
    "Content-Type: text/plain; charset=us-ascii",
    "",
    "Your message could not be delivered.",
    "",
    "--edge",
    "Content-Type: message/delivery-status",
    "",
    "Reporting-MTA: dns; mx.example.org",
    "",
    `Final-Recipient: rfc822; ${to}`,
    `Action: ${action}`,
    `Status: ${action === "failed" ? "5.1.1" : "4.4.1"}`,
    `Diagnostic-Code: smtp; 550 5.1.1 <${to}>: Recipient address`,
    "    rejected: User unknown",
    "",
    "--edge",
    "Content-Type: text/rfc822-headers",
    "",
    `Message-ID: ${messageId}`,
    "Subject: A letter",
    "",
    "--edge--",
    "",
  ].join("\r\n");
}

/** What somebody writes back from a mail program. */
export function anAnswer(
  { messageId, to }: Sent,
  {
    words,
    id = "answer-1",
    headers = [],
  }: { words: string; id?: string; headers?: readonly string[] },
): string {
  return [
    `From: Ottilie Brandvold <${to}>`,
    "To: office@example.com",
    "Subject: Re: A letter",
    "Date: Wed, 25 Nov 2026 18:20:00 +0000",
    `Message-ID: <${id}@example.com>`,
    `In-Reply-To: ${messageId}`,
    `References: <older@example.com> ${messageId}`,
    ...headers,
    "MIME-Version: 1.0",
    "Content-Type: text/plain; charset=utf-8",
    "Content-Transfer-Encoding: 8bit",
    "",
    words,
    "",
    "On Wed, Nov 25, 2026 at 10:00 AM Bellwether <office@example.com> wrote:",
    "> Dear neighbor,",
    "> what the camera found",
    "",
  ].join("\r\n");
}
