import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { requireUser } from "#app/session.ts";
import { MOST_HITS, type SearchHit, search } from "#db/queries/search.ts";

export const metadata: Metadata = { title: "Search" };

export default async function SearchPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly for?: string | string[] }>;
}) {
  await requireUser();
  const asked = [(await searchParams).for ?? ""].flat()[0]?.trim() ?? "";
  const hits = search(db(), asked);
  return (
    <div className="sheet">
      <PageHead {...headFor(asked, hits.length)}>
        <form action="/search" className="cluster cluster-end screen-only">
          <div className="field">
            <label htmlFor="search-for">Address, person, permit number, or any text on file</label>
            <input
              id="search-for"
              className="input"
              type="search"
              name="for"
              defaultValue={asked}
              placeholder="e.g. 14 Fennel, Brandvold, SS-26-0818"
            />
          </div>
          <button type="submit" className="button">
            Search
          </button>
        </form>
      </PageHead>
      {asked !== "" && hits.length === 0 ? <NothingFound asked={asked} /> : null}
      {byLine(hits).map(({ lineId, lineName, found }) => (
        <Section
          key={lineId}
          title={lineName}
          actions={<Link href={`/lines/${lineId}`}>All ten questions</Link>}
        >
          <div className="scroll">
            <table className="plain">
              <thead className="hidden">
                <tr>
                  <th scope="col">What</th>
                  <th scope="col">Name</th>
                  <th scope="col">Details</th>
                </tr>
              </thead>
              <tbody>
                {found.map((hit) => (
                  <tr key={`${hit.kind} ${hit.title} ${hit.detail}`}>
                    <td className="muted">{hit.kind}</td>
                    <th scope="row">
                      <Link href={placeOf(hit)}>{hit.title || "without a name"}</Link>
                    </th>
                    <td className="muted">{restOf(hit)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </Section>
      ))}
    </div>
  );
}

function headFor(asked: string, count: number): { asked: string; answer?: string } {
  if (asked === "") return { asked: "Search" };
  const places =
    count < MOST_HITS ? `${count} places` : `${count} places or more; the best are shown`;
  const answer = count === 1 ? "Found in 1 place" : `Found in ${places}`;
  return { asked: `“${asked}”`, answer: count === 0 ? "No results" : answer };
}

function placeOf({ lineId, question }: SearchHit): string {
  return question === null ? `/lines/${lineId}` : `/lines/${lineId}/${question}`;
}

/** The detail without the name that it begins with. */
function restOf({ title, detail }: SearchHit): string {
  return detail.startsWith(title) ? detail.slice(title.length).trim() : detail;
}

function byLine(hits: readonly SearchHit[]) {
  const lines = new Map<string, { lineId: string; lineName: string; found: SearchHit[] }>();
  for (const hit of hits) {
    const { lineId, lineName } = hit;
    const line = lines.get(lineId) ?? { lineId, lineName, found: [] };
    line.found.push(hit);
    lines.set(lineId, line);
  }
  return [...lines.values()];
}

function NothingFound({ asked }: { readonly asked: string }) {
  return (
    <Empty title={`No results for “${asked}”.`}>
      <p>
        All words must appear in the same entry, each from its first letters: try fewer words or
        part of a word. Closed lines are searched too.
      </p>
    </Empty>
  );
}
