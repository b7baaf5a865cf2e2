import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";

export default function NotFound() {
  return (
    <div className="sheet sheet-narrow">
      <PageHead asked="Page not found" />
      <p>The address may be mistyped, or the item is no longer in the file. Nothing was changed.</p>
      <p>
        <Link href="/">Go to the desk</Link>, or <Link href="/search">search</Link> for an address,
        a person or a permit number.
      </p>
    </div>
  );
}
