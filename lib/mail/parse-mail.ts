import PostalMime, { type Attachment, type Email } from "postal-mime";
import type { DeliveryReport, IncomingMail } from "#lib/domain/notices/incoming.ts";

/** Reads a message as a mail server keeps it. Nothing of it is run or fetched; HTML is only read where there is no text. */
export async function parseMail(source: Uint8Array): Promise<IncomingMail> {
  const mail = await PostalMime.parse(source, {
    forceRfc822Attachments: true,
    attachmentEncoding: "arraybuffer",
    maxNestingDepth: 20,
  });
  const header = (name: string) => mail.headers.find(({ key }) => key === name)?.value.trim() ?? "";
  const automatic = header("auto-submitted");
  return {
    messageId: mail.messageId ?? "",
    from: { name: mail.from?.name ?? "", address: mail.from?.address ?? "" },
    writtenAt: writtenAt(mail.date),
    subject: mail.subject ?? "",
    answers: [...idsIn(mail.references ?? ""), ...idsIn(mail.inReplyTo ?? "")],
    automatic: (automatic !== "" && automatic !== "no") || header("x-autoreply") !== "",
    text: (mail.text ?? plain(mail.html ?? "")).trim(),
    files: mail.attachments.filter(({ disposition }) => disposition === "attachment").length,
    report: reportIn(mail, header("content-type")),
  };
}

function writtenAt(date: string | undefined): string | null {
  const at = date === undefined ? Number.NaN : Date.parse(date);
  return Number.isNaN(at) ? null : new Date(at).toISOString();
}

function idsIn(text: string): string[] {
  return text.match(/<[^<>\s]+>/g) ?? [];
}

/** The words of HTML, roughly: a person reads the message itself in the mailbox. */
function plain(html: string): string {
  return html
    .replaceAll(/<(?:style|script)[\s\S]*?<\/(?:style|script)>/gi, "")
    .replaceAll(/<(?:br|\/p|\/div)[^>]*>/gi, "\n")
    .replaceAll(/<[^>]*>/g, "")
    .replaceAll(/&nbsp;/g, " ")
    .replaceAll(/&amp;/g, "&");
}

/** A report on delivery, if the message is one: `multipart/report` with the server's own fields. */
function reportIn(mail: Email, contentType: string): DeliveryReport | null {
  const status = mail.attachments.find(({ mimeType }) => mimeType === "message/delivery-status");
  if (status === undefined && !/report-type="?delivery-status/i.test(contentType)) return null;
  const fields = status === undefined ? "" : textOf(status);
  const field = (name: string) =>
    new RegExp(`^${name}:\\s*(.*(?:\\r?\\n[ \\t].*)*)`, "im").exec(fields)?.[1] ?? "";
  const words = [field("Status"), field("Diagnostic-Code").replace(/^smtp;\s*/i, "")];
  const original = mail.attachments.find(
    ({ mimeType }) => mimeType === "message/rfc822" || mimeType === "text/rfc822-headers",
  );
  return {
    messageId: /^message-id:\s*(<[^<>\s]+>)/im.exec(textOf(original))?.[1] ?? "",
    failed: /^failed/i.test(field("Action")),
    words: words
      .map((part) => part.replaceAll(/\s+/g, " ").trim())
      .filter((part) => part !== "")
      .join(", ")
      .slice(0, 500),
  };
}

function textOf(part: Attachment | undefined): string {
  if (part === undefined) return "";
  const { content } = part;
  return typeof content === "string" ? content : new TextDecoder().decode(content);
}
