import { onTestFinished } from "vitest";
import { startMailbox } from "./imap-server.ts";

/** A real IMAP server on loopback for one test, with one mailbox. */
export async function aMailbox(messages: readonly string[] = []) {
  const mailbox = await startMailbox(messages);
  onTestFinished(mailbox.stop);
  return mailbox;
}
