import { type ParsedMail, simpleParser } from "mailparser";
import { SMTPServer } from "smtp-server";
import { onTestFinished } from "vitest";
import type { SmtpSettings } from "#lib/env.ts";

/** A mail server that keeps what it takes. */
interface Peer {
  readonly smtp: SmtpSettings;
  readonly received: ParsedMail[];
  readonly raw: Buffer[];
}

/** A real SMTP server on loopback; `answers` says what it answers to each recipient in turn. */
export async function aPeer(answers: readonly (number | null)[] = []): Promise<Peer> {
  const received: ParsedMail[] = [];
  const raw: Buffer[] = [];
  let asked = 0;
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ["STARTTLS"],
    onRcptTo(_address, _session, done) {
      const code = answers[asked] ?? null;
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
  onTestFinished(() => new Promise<void>((resolve) => server.close(() => resolve())));
  const address = server.server.address();
  if (address === null || typeof address === "string") throw new Error("The peer has no port");
  return { smtp: { host: "127.0.0.1", port: address.port, user: "", password: "" }, received, raw };
}
