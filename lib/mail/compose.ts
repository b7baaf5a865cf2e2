import type { SendMailOptions } from "nodemailer";
import type { MailMessage } from "./message.ts";

/** A message as nodemailer takes it: plain text and its PDFs; nothing is read from disk or network. */
export function composeMail(message: MailMessage): SendMailOptions {
  return {
    messageId: message.messageId,
    date: message.date,
    from: message.from,
    to: message.to,
    subject: message.subject,
    text: message.text,
    xMailer: false,
    headers: { "Auto-Submitted": "auto-generated" },
    attachments: message.attachments.map(({ name, bytes }) => ({
      filename: name,
      content: Buffer.from(bytes),
      contentType: "application/pdf",
    })),
    disableFileAccess: true,
    disableUrlAccess: true,
  };
}
