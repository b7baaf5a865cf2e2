// A process of its own that reads tables; lib/exchange/table-file/read-table-apart.ts asks it.
import { workApart } from "#lib/apart/work-apart.ts";
import { readTableFile } from "./read-table-file.ts";

workApart(({ bytes }: { readonly bytes: Uint8Array }) => readTableFile(bytes));
