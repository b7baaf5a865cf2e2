/** How the office sends mail. */
export interface MailRules {
  /** At most so many messages an hour, as the mail provider has it; null: as many as there are. */
  readonly perHour: number | null;
}
