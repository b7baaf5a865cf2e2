import { type ParsedMail, simpleParser } from "mailparser";
import { SMTPServer } from "smtp-server";
import type { SmtpSettings } from "#lib/env.ts";

/** A mail server that keeps what it takes. */
export interface Peer {
  readonly smtp: SmtpSettings;
  readonly received: ParsedMail[];
  readonly raw: Buffer[];
  readonly stop: () => Promise<void>;
}

/** What a server says of a recipient, the first, the second …: a code that refuses them; null: it takes them. */
type AnswerTo = (address: string, asked: number) => number | null;

/** A real SMTP server on loopback, until it is stopped. */
export async function startPeer(answerTo: AnswerTo = () => null): Promise<Peer> {
  const received: ParsedMail[] = [];
  const raw: Buffer[] = [];
  let asked = 0;
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onRcptTo({ address }, _session, done) {
      const code = answerTo(address, asked);
      asked += 1;
      if (code === null) return done();
      done(
        Object.assign(new Error(code < 500 ? "try later" : "no such box"), { responseCode: code }),
      );
    },
    onData(stream, _session, done) {
      const chunks: Buffer[] = [];
      stream.on("data", (chunk: Buffer) => chunks.push(chunk));
      stream.on("end", () => {
        const bytes = Buffer.concat(chunks);
        raw.push(bytes);
        simpleParser(bytes).then((mail) => {
          received.push(mail);
          done();
        }, done);
      });
    },
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("The peer has no port");
  const smtp = { host: "127.0.0.1", port: address.port, user: "", password: "" };
  const stop = () => new Promise<void>((resolve) => server.close(() => resolve()));
  return { smtp, received, raw, stop };
}
