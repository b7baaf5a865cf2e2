// npm run check-data: looks for what was changed or lost behind the program's back.
import { readEnv } from "#lib/env.ts";
import { checkOffice } from "#lib/operations/check-office.ts";
import { inWords, sentence } from "./in-words.ts";

process.umask(0o077);

const { dataFolder } = readEnv();
const checked = inWords(() => checkOffice({ dataFolder }));
if (checked.ok) {
  const { lines, signatures, letters, files, faults } = checked.value;
  for (const { where, words } of faults)
    console.error(sentence(where === "" ? words : `${where}: ${words}`));
  const looked = `${dataFolder}: ${lines} lines, ${signatures} signatures, ${letters} sent letters, ${files} stored files`;
  console.log(
    faults.length === 0
      ? `Checked ${looked}. No problems found.`
      : `Checked ${looked}. ${faults.length} problems found; see above. Restore an earlier backup into another folder and compare.`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
} else {
  console.error(`Nothing was checked: ${sentence(checked.error.detail)}`);
  process.exitCode = 2;
}
