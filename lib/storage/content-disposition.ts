/**
 * The header that names a file to the browser (RFC 6266): plain letters for old readers, and the
 * whole name percent-encoded as UTF-8 (RFC 8187).
 */
export function contentDisposition(kind: "inline" | "attachment", name: string): string {
  const plain = name
    .normalize("NFD")
    .replace(/\p{Mark}/gu, "")
    .replace(/[^\x20-\x7e]/g, "_")
    .replace(/["\\%]/g, "_");
  const whole = encodeURIComponent(Buffer.from(name).toString()).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `${kind}; filename="${plain}"; filename*=UTF-8''${whole}`;
}
