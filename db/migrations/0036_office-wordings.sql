CREATE TABLE `wording_uses` (
	`position` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`kind` text NOT NULL,
	`language` text NOT NULL,
	`version` integer NOT NULL,
	`used_by` text NOT NULL,
	`used_at` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `wordings` (
	`position` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`kind` text NOT NULL,
	`language` text NOT NULL,
	`version` integer NOT NULL,
	`text` text NOT NULL,
	`saved_by` text NOT NULL,
	`saved_at` text NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `wordings_version` ON `wordings` (`kind`,`language`,`version`);