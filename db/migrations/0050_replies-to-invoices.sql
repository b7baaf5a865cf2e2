PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_replies` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`notice_id` text,
	`entry_id` text,
	`kind` text NOT NULL,
	`received_on` text NOT NULL,
	`taken_by` text NOT NULL,
	`words` text NOT NULL,
	`suits_on` text,
	`upload_id` text,
	`dealt_by` text DEFAULT '' NOT NULL,
	`dealt_on` text,
	`dealt_how` text,
	`dealt_words` text DEFAULT '' NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`notice_id`) REFERENCES `notices`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`entry_id`) REFERENCES `ledger_entries`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_replies`("line_id", "id", "position", "notice_id", "entry_id", "kind", "received_on", "taken_by", "words", "suits_on", "upload_id", "dealt_by", "dealt_on", "dealt_how", "dealt_words") SELECT "line_id", "id", "position", "notice_id", NULL, "kind", "received_on", "taken_by", "words", "suits_on", "upload_id", "dealt_by", "dealt_on", "dealt_how", "dealt_words" FROM `replies`;--> statement-breakpoint
DROP TABLE `replies`;--> statement-breakpoint
ALTER TABLE `__new_replies` RENAME TO `replies`;--> statement-breakpoint
PRAGMA foreign_keys=ON;