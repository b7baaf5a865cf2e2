// npm run -s line -- …: see line.ts.
import { runBundled } from "./bundled.mjs";

await runBundled("line");
