import { PageHead } from "#app/_components/page-head.tsx";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";
import { linePartOf } from "../../line-part.ts";
import { counted } from "../../names.ts";
import { PropertyList } from "../property-list.tsx";

export const metadata = { title: "People by property" };

export default async function ByPropertyPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
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
      <PropertyList properties={properties} report={report} />
    </>
  );
}
