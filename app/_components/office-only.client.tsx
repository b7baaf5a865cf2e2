"use client";

import { usePathname } from "next/navigation";
import type { ReactNode } from "react";

/** What belongs to the office; left out of the pages that neighbors open by a private link. */
export function OfficeOnly({ children }: { readonly children: ReactNode }) {
  return /^\/n(\/|$)/.test(usePathname()) ? null : children;
}
