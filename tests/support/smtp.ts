import { onTestFinished } from "vitest";
import { type Peer, startPeer } from "./smtp-server.ts";

/** A real SMTP server on loopback for one test; `answers` says what it answers to each recipient in turn. */
export async function aPeer(answers: readonly (number | null)[] = []): Promise<Peer> {
  const peer = await startPeer((_address, asked) => answers[asked] ?? null);
  onTestFinished(peer.stop);
  return peer;
}
