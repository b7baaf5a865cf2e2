import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { oneOf } from "#app/form.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ListPlace } from "#lib/domain/party/listed-row.ts";
import { lineFileOf } from "../file.ts";
import { BringIn } from "./bring-in.client.tsx";

export const metadata: Metadata = { title: "Import rows from a file" };

interface Query {
  readonly table?: string | string[];
  readonly to?: string | string[];
}

export default async function BringInPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<Query>;
}) {
  const { lineId } = await params;
  const { table: wanted, to } = await searchParams;
  const { file, may } = await lineFileOf(lineId);
  const table = oneOf(["entries", "observations", "runs", "people"] as const, String(wanted));
  const target = targetOf(file, table, String(to));
  if (table === null || target === null) return <Choose lineId={lineId} file={file} />;
  const back = backOf(lineId, table, target.id);
  const office = table === "entries" || table === "people";
  const allowed = may(office ? "work-the-file" : "record-the-field");
  return (
    <>
      <PageHead asked={`Import rows into ${target.name}`}>
        <p>
          From a spreadsheet or a CSV file. Nothing is saved until you review it; what can’t be read
          stays here until you fix it.
        </p>
        <p>
          <Link href={back}>Back to {target.name}</Link>
        </p>
      </PageHead>
      {allowed ? (
        <BringIn
          key={`${table} ${target.id}`}
          lineId={lineId}
          table={table}
          to={target.id}
          name={target.name}
          back={back}
          there={thereIn(file, table, target.id)}
          properties={file.properties}
          runs={file.runs}
          place={table === "people" ? placeOf(file) : null}
        />
      ) : (
        <NoticeBox
          title={file.line.closedOn === null ? "Your role is view only" : "The file is closed"}
        >
          <p>
            {file.line.closedOn === null
              ? "Ask the office to import these rows, or an admin to change your role."
              : "Reopen the file to import rows."}
          </p>
        </NoticeBox>
      )}
    </>
  );
}

interface Target {
  readonly id: string;
  readonly name: string;
}

type Table = "entries" | "observations" | "runs" | "people";

function placeOf({ properties, parties, roles, units }: LineFile): ListPlace {
  return { properties, parties, roles, units };
}

/** In an address: each row of the file names its own run. */
const EACH = "each";

function targetOf(file: LineFile, table: Table | null, to: string): Target | null {
  if (table === "runs") return { id: "", name: file.line.name };
  if (table === "people") return { id: "", name: "properties and people" };
  if (table === "entries") {
    const record = file.records.find(({ id }) => id === to);
    return record === undefined ? null : { id: record.id, name: record.title };
  }
  const run = file.runs.find(({ id }) => id === to);
  if (run === undefined && to === EACH && file.runs.length > 0) return { id: "", name: "the runs" };
  return table === null || run === undefined ? null : { id: run.id, name: run.name };
}

/** What is there already at the place where the rows go. */
function thereIn(file: LineFile, table: Table, to: string): readonly object[] {
  if (table === "entries") return file.entries.filter(({ recordId }) => recordId === to);
  if (table === "runs") return file.runs;
  if (table === "people") return [];
  return file.observations.filter(({ runId }) => to === "" || runId === to);
}

function backOf(lineId: string, table: Table, id: string): string {
  if (table === "entries") return `/lines/${lineId}/record`;
  if (table === "runs") return `/lines/${lineId}/camera`;
  if (table === "people") return `/lines/${lineId}/who`;
  return `/lines/${lineId}/camera/log${id === "" ? "" : `?run=${encodeURIComponent(id)}`}`;
}

/** Where no record or run was named: which one it is. */
function Choose({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  const targets = [
    ...file.records.map(({ id, title }) => ({ id, name: title, table: "entries" })),
    ...file.runs.map(({ id, name }) => ({ id, name, table: "observations" })),
    ...(file.runs.length > 1
      ? [{ id: EACH, name: "all runs: each row of the file names its run", table: "observations" }]
      : []),
  ];
  return (
    <>
      <PageHead asked="Import rows from a file" />
      {targets.length === 0 ? (
        <Empty title="Enter a record or a run first.">
          <p>
            Entries go into a <Link href={`/lines/${lineId}/record`}>record</Link>, observations
            into a <Link href={`/lines/${lineId}/camera`}>run of the camera</Link>.
          </p>
        </Empty>
      ) : (
        <>
          <p>Which record do the entries belong to, or which run saw them?</p>
          <ul>
            {targets.map(({ id, name, table }) => (
              <li key={`${table} ${id}`}>
                <Link
                  href={`/lines/${lineId}/bring-in?table=${table}&to=${encodeURIComponent(id)}`}
                >
                  {name}
                </Link>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
