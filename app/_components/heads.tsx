/** What each column of a table is called; a column of figures is set right. */
export function Heads({ of }: { readonly of: readonly (string | { readonly num: string })[] }) {
  return (
    <thead>
      <tr>
        {of.map((head) =>
          typeof head === "string" ? (
            <th key={head} scope="col">
              {head}
            </th>
          ) : (
            <th key={head.num} scope="col" className="num">
              {head.num}
            </th>
          ),
        )}
      </tr>
    </thead>
  );
}
