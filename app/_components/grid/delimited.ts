const LINE_ENDS = ["\r\n", "\n", "\r"];

/**
 * Rows of cells out of a short text whose separator is known, as a sheet puts it on the clipboard.
 * Quoted cells may hold separators, line ends and doubled quotation marks; a mark inside a cell, or
 * one after which a quoted cell goes on, is a letter. Rows end as the first one does. Null where a
 * quoted cell never closes. Files that come in are read on the server, with `csv-parse`, whose rows
 * these are letter for letter.
 */
export function cellsOf(
  text: string,
  { separator, quotes }: { readonly separator: string; readonly quotes: boolean },
): string[][] | null {
  const rows: string[][] = [];
  let row: string[] = [];
  let lineEnd: string | undefined;
  let at = 0;
  if (text === "") return rows;
  for (;;) {
    const cell = quotes && text[at] === '"' ? quoted(at + 1) : plain(at);
    if (cell === null) return null;
    row.push(cell.value);
    at = cell.next;
    if (text[at] === separator) {
      at += separator.length;
      continue;
    }
    rows.push(row);
    row = [];
    at += lineEndAt(at);
    // Nothing behind the last line end is no row.
    if (at === text.length) return rows;
  }

  /** Up to the next separator or line end. */
  function plain(from: number): { value: string; next: number } {
    let next = from;
    while (!isOver(next)) next += 1;
    return { value: text.slice(from, next), next };
  }

  function quoted(opened: number): { value: string; next: number } | null {
    let value = "";
    for (let from = opened; ; ) {
      const mark = text.indexOf('"', from);
      if (mark === -1) return null;
      value += text.slice(from, mark);
      from = mark + 1;
      if (text[from] === '"') {
        value += '"';
        from += 1;
      } else if (isOver(from)) {
        return { value, next: from };
      } else {
        const rest = plain(from);
        return { value: `"${value}"${rest.value}`, next: rest.next };
      }
    }
  }

  function isOver(place: number): boolean {
    return place === text.length || text[place] === separator || lineEndAt(place) > 0;
  }

  /** How many letters of a line end stand here. */
  function lineEndAt(place: number): number {
    lineEnd ??= LINE_ENDS.find((end) => text.startsWith(end, place));
    return lineEnd !== undefined && text.startsWith(lineEnd, place) ? lineEnd.length : 0;
  }
}
