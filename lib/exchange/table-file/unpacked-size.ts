const END_OF_LIST = 0x06054b50;
const LISTED_FILE = 0x02014b50;
const SHORTEST_END = 22;
const LONGEST_REMARK = 65_535;

/**
 * Bytes that a zip file says it holds once unpacked: a small file may unpack to more than there is
 * memory for. Null where it has no list of contents.
 */
export function unpackedSize(bytes: Uint8Array): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOfList(view);
  if (end === null) return null;
  let at = view.getUint32(end + 16, true);
  let total = 0;
  for (let count = view.getUint16(end + 10, true); count > 0; count -= 1) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== LISTED_FILE) return null;
    total += view.getUint32(at + 24, true);
    at += 46 + [28, 30, 32].reduce((sum, field) => sum + view.getUint16(at + field, true), 0);
  }
  return total;
}

function endOfList(view: DataView): number | null {
  const last = view.byteLength - SHORTEST_END;
  for (let at = last; at >= 0 && at >= last - LONGEST_REMARK; at -= 1) {
    if (view.getUint32(at, true) === END_OF_LIST) return at;
  }
  return null;
}
