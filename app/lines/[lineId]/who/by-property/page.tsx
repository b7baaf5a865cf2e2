import { PageHead } from "#app/_components/page-head.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import { PropertyList } from "../property-list.tsx";

/** So many properties stand on a page. */
const AT_ONCE = 60;

export const metadata = { title: "People by property" };

export default async function ByPropertyPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ page?: string | string[] }>;
}) {
  const { lineId } = await params;
  const from = pageFrom((await searchParams).page, AT_ONCE);
  const { file, report } = await linePartOf(lineId);
  const properties = stakeholdersOf(file);
  const lacking = properties.filter(({ missing }) => missing.length > 0).length;
  return (
    <>
      <PageHead
        asked="People by property"
        answer={
          lacking === 0
            ? "All properties are complete"
            : `${lacking} of ${counted(properties.length, "property is", "properties are")} missing information`
        }
      />
      <PropertyList properties={onPage(properties, from, AT_ONCE)} report={report} />
      <Pages
        from={from}
        most={AT_ONCE}
        of={properties.length}
        what="properties"
        href={(page) => `/lines/${lineId}/who/by-property?page=${page}`}
      />
    </>
  );
}
