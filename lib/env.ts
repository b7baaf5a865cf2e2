import path from "node:path";
import { z } from "zod";
import { isNet } from "./caller-address.ts";

const ADDRESS = "WYEBOOK_ADDRESS is the address that people type: https://office.example.com";
const PROXY = "WYEBOOK_PROXY lists the addresses of your own proxies: 127.0.0.1,10.0.0.0/8";

const Env = z.object({
  WYEBOOK_DATA: z.string().min(1).default("data/office"),
  PORT: z.coerce.number().int().min(1).max(65_535).default(3200),
  WYEBOOK_TODAY: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/)
    .optional(),
  WYEBOOK_ADDRESS: z
    .string()
    .optional()
    .transform((text) => text || null)
    .refine((text) => text === null || isWebAddress(text), ADDRESS),
  WYEBOOK_PROXY: z
    .string()
    .default("")
    .transform((text) => text.split(",").map((part) => part.trim()))
    .transform((parts) => parts.filter((part) => part !== ""))
    .refine((parts) => parts.every(isNet), PROXY),
  /** Set by the page server itself (lib/commands/pages.mjs). */
  WYEBOOK_PEER_HEADER: z.string().optional(),
  WYEBOOK_UPLOAD_MB: z.coerce.number().positive().max(10_000).default(100),
  WYEBOOK_VIDEO_MB: z.coerce.number().positive().max(1_000_000).default(8192),
  WYEBOOK_SMTP_HOST: z.string().default(""),
  WYEBOOK_SMTP_PORT: z.coerce.number().int().min(1).max(65_535).default(587),
  WYEBOOK_SMTP_USER: z.string().default(""),
  WYEBOOK_SMTP_PASSWORD: z.string().default(""),
  WYEBOOK_MAIL_FROM: z.string().default(""),
  WYEBOOK_IMAP_HOST: z.string().default(""),
  WYEBOOK_IMAP_PORT: z.coerce.number().int().min(1).max(65_535).default(993),
  WYEBOOK_IMAP_USER: z.string().default(""),
  WYEBOOK_IMAP_PASSWORD: z.string().default(""),
  WYEBOOK_IMAP_FOLDER: z.string().default("INBOX"),
  NODE_ENV: z.string().default("development"),
});

export interface Env {
  /** Folder of the database, the stored files and the unsent mail. */
  readonly dataFolder: string;
  readonly port: number;
  /** Fixes the day for demonstrations and tests; null: the office's own calendar. */
  readonly today: string | null;
  /** The address that people type, scheme and host alone: `https://office.example.com`. */
  readonly address: string | null;
  /** Proxies whose `X-Forwarded-For` is believed: addresses and nets. */
  readonly proxies: readonly string[];
  /** The header in which the page server hands on the socket's address; null: it is not known. */
  readonly peerHeader: string | null;
  readonly production: boolean;
  /** Largest file that is stored, in bytes. */
  readonly uploadLimit: number;
  /** Largest recording of a run that is stored, in bytes. */
  readonly videoLimit: number;
  /** Where mail goes out; null: messages are written to a folder. */
  readonly smtp: SmtpSettings | null;
  /** From whom mail comes; empty: the office's own address. */
  readonly mailFrom: string;
  /** The mailbox to which returned mail and answers come; null: nobody reads one. */
  readonly imap: ImapSettings | null;
}

export interface SmtpSettings {
  readonly host: string;
  readonly port: number;
  /** Empty: without signing in. */
  readonly user: string;
  readonly password: string;
}

export interface ImapSettings {
  readonly host: string;
  /** 993 is encrypted from the start; at any other the server is asked to encrypt. */
  readonly port: number;
  readonly user: string;
  readonly password: string;
  readonly folder: string;
}

/** Reads the environment; the only place that does. Throws where a value makes no sense. */
export function readEnv(source: Record<string, string | undefined> = process.env): Env {
  const env = Env.parse(source);
  return {
    dataFolder: path.resolve(env.WYEBOOK_DATA),
    port: env.PORT,
    today: env.WYEBOOK_TODAY ?? null,
    address: env.WYEBOOK_ADDRESS === null ? null : new URL(env.WYEBOOK_ADDRESS).origin,
    proxies: env.WYEBOOK_PROXY,
    peerHeader: env.WYEBOOK_PEER_HEADER ?? null,
    production: env.NODE_ENV === "production",
    uploadLimit: Math.floor(env.WYEBOOK_UPLOAD_MB * 1_000_000),
    videoLimit: Math.floor(env.WYEBOOK_VIDEO_MB * 1_000_000),
    smtp:
      env.WYEBOOK_SMTP_HOST === ""
        ? null
        : {
            host: env.WYEBOOK_SMTP_HOST,
            port: env.WYEBOOK_SMTP_PORT,
            user: env.WYEBOOK_SMTP_USER,
            password: env.WYEBOOK_SMTP_PASSWORD,
          },
    mailFrom: env.WYEBOOK_MAIL_FROM,
    imap:
      env.WYEBOOK_IMAP_HOST === ""
        ? null
        : {
            host: env.WYEBOOK_IMAP_HOST,
            port: env.WYEBOOK_IMAP_PORT,
            user: env.WYEBOOK_IMAP_USER,
            password: env.WYEBOOK_IMAP_PASSWORD,
            folder: env.WYEBOOK_IMAP_FOLDER,
          },
  };
}

function isWebAddress(text: string): boolean {
  return URL.canParse(text) && /^https?:$/.test(new URL(text).protocol);
}
