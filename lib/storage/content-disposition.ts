import { create } from "content-disposition";

/**
 * The header that names a file to the browser (RFC 6266): plain letters for old readers, and the
 * whole name percent-encoded as UTF-8 (RFC 8187).
 */
export function contentDisposition(type: "inline" | "attachment", name: string): string {
  const plain = name
    .normalize("NFD")
    .replace(/\p{Mark}/gu, "")
    .replace(/[^\x20-\x7e]|["\\%]/g, "_");
  return create(Buffer.from(name).toString(), { type, fallback: plain });
}
