/** What a draft still lacks before it should go out, one line each; nothing where it lacks nothing. */
export function GapList({ gaps }: { readonly gaps: readonly string[] }) {
  if (gaps.length === 0) return null;
  return (
    <ul className="mend small plain-list" aria-label="What this letter still lacks">
      {gaps.map((gap) => (
        <li key={gap}>{gap}</li>
      ))}
    </ul>
  );
}
