import Link from "next/link";

/** Which part of a long list an address asks for: its first row, counted from 0. */
export function pageFrom(asked: string | string[] | undefined, most: number): number {
  const number = Number([asked ?? ""].flat()[0]);
  return Number.isSafeInteger(number) && number > 1 ? (number - 1) * most : 0;
}

/** The rows of the part of a list that an address asks for. */
export function onPage<T>(rows: readonly T[], from: number, most: number): readonly T[] {
  return rows.slice(from, from + most);
}

/** `26 to 50 of 1,000`, with the ways back and on; nothing where all is shown. */
export function Pages({
  from,
  most,
  of,
  what,
  href,
}: {
  readonly from: number;
  readonly most: number;
  readonly of: number;
  /** What is listed, as `lines`. */
  readonly what: string;
  /** The address of a page by its number. */
  readonly href: (page: number) => string;
}) {
  if (of <= most && from === 0) return null;
  const page = Math.floor(from / most) + 1;
  const last = Math.max(1, Math.ceil(of / most));
  const to = Math.min(from + most, of);
  const number = (each: number) => each.toLocaleString("en-US");
  return (
    <nav className="cluster" aria-label={`Pages of ${what}`}>
      <span className="muted">
        {from < of
          ? `${number(from + 1)} to ${number(to)} of ${number(of)} ${what}`
          : `${number(of)} ${what}, and none here`}
      </span>
      {page > 1 ? <Link href={href(Math.min(page - 1, last))}>Previous {most}</Link> : null}
      {page < last ? <Link href={href(page + 1)}>Next {Math.min(most, of - to)}</Link> : null}
    </nav>
  );
}
