// A process of its own that makes pages of stored files; lib/documents/uploads-apart.ts asks it.
import { workApart } from "#lib/apart/work-apart.ts";
import { uploadPages } from "./upload-pages.ts";

workApart(({ bytes }: { readonly bytes: Uint8Array }) => uploadPages(bytes));
