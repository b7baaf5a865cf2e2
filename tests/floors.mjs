// The rooms of lib/domain from the ground up: a room imports from rooms above it in this list, and
// never from one below it.
export const FLOORS = [
  // Units
  "length",
  "money",
  "say",
  "time",
  // Facts
  "facts",
  "plan",
  "findings",
  "stops",
  // What each fact says by itself
  "line",
  "record",
  "run",
  "narration",
  "party",
  "permit",
  "calendar",
  "starters",
  // What follows
  "reconcile",
  "tiein",
  "agreement",
  "sharing",
  "responsibility",
  "capacity",
  "split",
  "notices",
  "consent",
  "testing",
  "rollcall",
  "reconnection",
  "holds",
  "ledger",
  "closing",
  "clocks",
  "safety",
  // Told to people
  "report",
  "strip",
  "paper",
  "form",
  "packet",
  "crew",
  "desk",
];
