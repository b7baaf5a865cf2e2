import { mkdir, rename, writeFile } from "node:fs/promises";
import path from "node:path";
import nodemailer from "nodemailer";
import { composeMail } from "./compose.ts";
import type { MailMessage } from "./message.ts";

/**
 * Writes a message as it would have been sent to `unsent-mail` in the data folder, one `.eml` file
 * each, named by its Message-ID; writing it again replaces it. Returns the file's place.
 */
export async function writeUnsent(dataFolder: string, message: MailMessage): Promise<string> {
  const transport = nodemailer.createTransport({ streamTransport: true, buffer: true });
  const { message: bytes } = await transport.sendMail(composeMail(message));
  const folder = path.join(dataFolder, "unsent-mail");
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const name = message.messageId.replace(/^<|@.*$/g, "").replace(/[^A-Za-z0-9.-]/g, "-");
  const place = path.join(folder, `${name}.eml`);
  await writeFile(`${place}.part`, bytes as Buffer, { mode: 0o600 });
  await rename(`${place}.part`, place);
  return place;
}
