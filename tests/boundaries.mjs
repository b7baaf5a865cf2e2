import { FLOORS } from "./floors.mjs";

function forbid(name, from, to) {
  return { name, severity: "error", from, to };
}

/** Pure packages that serve a rule; the core may import these and nothing else. */
const PURE_PACKAGES = "^node_modules/(date-holidays|munkres|temporal-polyfill|temporal-utils)/";

/** A room of the core knows the rooms on the floors beneath it, and none above. */
const FLOORS_GO_DOWN = FLOORS.slice(0, -1).map((room, floor) =>
  forbid(
    `${room}-knows-nothing-above-it`,
    { path: `^lib/domain/${room}/` },
    { path: `^lib/domain/(${FLOORS.slice(floor + 1).join("|")})/` },
  ),
);

export default {
  forbidden: [
    ...FLOORS_GO_DOWN,
    forbid("no-circular", {}, { circular: true }),
    forbid("no-unresolvable", {}, { couldNotResolve: true }),
    forbid(
      "domain-is-pure",
      { path: "^lib/domain/" },
      { pathNot: [`^lib/(domain/|(result|remembered)\\.ts$)`, PURE_PACKAGES] },
    ),
    forbid(
      "db-knows-only-domain",
      { path: "^db/" },
      { path: "^(app|seed|tests|lib/(?!domain/|result\\.ts$))" },
    ),
    forbid(
      "services-know-only-domain",
      { path: "^lib/(documents|mail|storage|exchange)/" },
      { path: "^(app|db|seed|tests|lib/(operations|commands)/)" },
    ),
    forbid("nothing-imports-app", { pathNot: "^(app|tests)/" }, { path: "^app/" }),
    forbid("nothing-imports-tests", { pathNot: "^tests/" }, { path: "^tests/" }),
    forbid(
      "only-commands-import-seed",
      { pathNot: "^(tests|seed|lib/commands)/" },
      { path: "^seed/" },
    ),
    forbid(
      "nothing-imports-commands",
      { pathNot: "^(tests|lib/commands)/" },
      { path: "^lib/commands/" },
    ),
    forbid(
      "app-reads-through-queries",
      { path: "^app/", pathNot: "^app/db\\.ts$" },
      { path: "^db/(?!queries/)" },
    ),
    forbid(
      "operations-go-through-queries",
      { path: "^lib/operations/" },
      { path: "^db/(?!queries/|open\\.ts$)" },
    ),
    forbid("app-renders-no-pdf", { path: "^app/" }, { path: "^lib/documents/" }),
    forbid("app-sends-no-mail", { path: "^app/" }, { path: "^lib/mail/" }),
    forbid(
      "only-db-knows-sql",
      { pathNot: "^(db|tests)/" },
      { path: "^node_modules/(drizzle-orm|better-sqlite3|drizzle-kit)/" },
    ),
    // The page server starts Next, and knows nothing else of it.
    forbid(
      "only-app-knows-next",
      { pathNot: "^(app|tests)/|^lib/commands/pages\\.mjs$" },
      { path: "^node_modules/next/" },
    ),
    forbid(
      "one-module-per-service",
      { pathNot: "^(lib/(mail|documents)|tests)/" },
      { path: "^node_modules/(nodemailer|@react-pdf|@cantoo)/" },
    ),
    forbid(
      "client-components-stay-thin",
      { path: "\\.client\\.tsx$" },
      { path: "^(db|lib/(operations|documents|mail|storage))/|^app/(db|session)\\.ts$" },
    ),
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^(\\.next|data|next-env)" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".mjs", ".js"],
    },
  },
};
