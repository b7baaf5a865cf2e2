import { type CutArea, SURFACE_WORDS, totalArea } from "#lib/domain/application/surface-area.ts";
import { sayWhere } from "#lib/domain/length/stretch.ts";
import { sayList } from "#lib/domain/say/say-list.ts";

/** Square feet of each surface, with how they were worked out and what lacks. */
export function Areas({ areas }: { readonly areas: readonly CutArea[] }) {
  if (areas.length === 0) return null;
  const total = totalArea(areas);
  return (
    <table className="plain">
      <caption>Area to cut and restore</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Surface</th>
          <th scope="col">How it is worked out</th>
          <th scope="col" className="num nowrap">
            Sq ft
          </th>
        </tr>
      </thead>
      <tbody>
        {areas.map((area) => (
          <tr key={area.cut.id}>
            <th scope="row">{sayWhere(area.cut)}</th>
            <td>{SURFACE_WORDS[area.cut.surface]}</td>
            <td>
              {area.steps.join(". ")}
              {area.citation === "" ? null : <span className="muted small"> {area.citation}</span>}
              {area.lacks.length === 0 ? null : <strong> Missing: {sayList(area.lacks)}.</strong>}
              {area.noCut === "" ? null : <strong> {area.noCut}</strong>}
            </td>
            <td className="num">{area.squareFeet ?? "unknown"}</td>
          </tr>
        ))}
        <tr>
          <th scope="row" colSpan={3}>
            Total
          </th>
          <td className="num">{total ?? "unknown"}</td>
        </tr>
      </tbody>
    </table>
  );
}
