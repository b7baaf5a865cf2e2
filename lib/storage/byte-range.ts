/** Bytes of a file from the first to the last, both counted in. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/**
 * What a `Range` header asks of a file of `size` bytes (RFC 9110, section 14): one range; `whole`
 * where nothing, several ranges or nonsense was asked, which the standard lets a server answer with
 * the whole file; `unsatisfiable` where the range begins beyond the end.
 */
export function parseRange(
  header: string | null,
  size: number,
): ByteRange | "whole" | "unsatisfiable" {
  const asked = /^bytes=\s*(\d*)-(\d*)\s*$/i.exec(header ?? "");
  if (asked === null) return "whole";
  const [, first = "", last = ""] = asked;
  if (first === "") return last === "" ? "whole" : lastBytes(Number(last), size);
  const from = Number(first);
  const to = last === "" ? size - 1 : Number(last);
  if (to < from && last !== "") return "whole";
  return from >= size ? "unsatisfiable" : { from, to: Math.min(to, size - 1) };
}

function lastBytes(many: number, size: number): ByteRange | "unsatisfiable" {
  if (many === 0 || size === 0) return "unsatisfiable";
  return { from: Math.max(size - many, 0), to: size - 1 };
}

/** The `Content-Range` of a piece that is sent, `bytes 0-99/1000`; with a star for the range it only asks. */
export function parseContentRange(
  header: string | null,
): { readonly from: number; readonly length: number; readonly total: number } | null {
  const said = /^bytes (?:(\d+)-(\d+)|\*)\/(\d+)$/i.exec(header ?? "");
  if (said === null) return null;
  const [, first, last, total] = said;
  if (first === undefined || last === undefined)
    return { from: 0, length: 0, total: Number(total) };
  const length = Number(last) - Number(first) + 1;
  const whole = { from: Number(first), length, total: Number(total) };
  return length < 1 || Number(last) >= whole.total ? null : whole;
}
