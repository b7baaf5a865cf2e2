-- Money and signatures are added, never changed or removed: what was wrong is reversed or superseded.
CREATE TRIGGER `ledger_entries_no_update` BEFORE UPDATE ON `ledger_entries`
BEGIN
	SELECT RAISE(ABORT, 'the ledger is append-only');
END;
--> statement-breakpoint
CREATE TRIGGER `ledger_entries_no_delete` BEFORE DELETE ON `ledger_entries`
BEGIN
	SELECT RAISE(ABORT, 'the ledger is append-only');
END;
--> statement-breakpoint
CREATE TRIGGER `signatures_no_update` BEFORE UPDATE ON `signatures`
BEGIN
	SELECT RAISE(ABORT, 'signatures are append-only');
END;
--> statement-breakpoint
CREATE TRIGGER `signatures_no_delete` BEFORE DELETE ON `signatures`
BEGIN
	SELECT RAISE(ABORT, 'signatures are append-only');
END;
