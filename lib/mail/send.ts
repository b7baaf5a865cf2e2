import { Transform } from "node:stream";
import nodemailer from "nodemailer";
import type { SmtpSettings } from "#lib/env.ts";
import { composeMail } from "./compose.ts";
import type { MailMessage } from "./message.ts";

/**
 * What a try came to. `refused`: the server will not take it however often it is asked (5xx).
 * `later`: it may be taken another time (4xx, no answer, no connection).
 */
export type SendOutcome =
  | { readonly state: "accepted"; readonly words: string }
  | { readonly state: "refused"; readonly words: string }
  | {
      readonly state: "later";
      readonly words: string;
      /** The server had the whole message, and its answer was lost: it may have taken it. */
      readonly unsure?: boolean;
    };

/** Hands one message to the SMTP server and says what it answered. */
export async function sendMail(smtp: SmtpSettings, message: MailMessage): Promise<SendOutcome> {
  const transport = nodemailer.createTransport({
    host: smtp.host,
    port: smtp.port,
    secure: smtp.port === 465,
    ...(smtp.user === "" ? {} : { auth: { user: smtp.user, pass: smtp.password } }),
    connectionTimeout: 20_000,
    greetingTimeout: 20_000,
    socketTimeout: 60_000,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  let isWhole = false;
  transport.use("stream", (mail, done) => {
    mail.message.transform(
      () =>
        new Transform({
          transform: (chunk, _encoding, next) => next(null, chunk),
          flush: (end) => {
            isWhole = true;
            end();
          },
        }),
    );
    done();
  });
  try {
    const sent = await transport.sendMail(composeMail(message));
    return { state: "accepted", words: oneLine(sent.response) };
  } catch (error) {
    return outcomeOf(error, isWhole);
  } finally {
    transport.close();
  }
}

/** Told apart by the server's own code: the library's codes are the same for both. */
function outcomeOf(error: unknown, isWhole: boolean): SendOutcome {
  const { responseCode, response, message } = error as {
    responseCode?: number;
    response?: string;
    message?: string;
  };
  const words = oneLine(response ?? message ?? "no answer");
  if (responseCode === undefined) return { state: "later", words, unsure: isWhole };
  const permanent = responseCode >= 500 && responseCode < 600;
  return { state: permanent ? "refused" : "later", words };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim().slice(0, 500);
}
