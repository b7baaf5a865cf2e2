CREATE TABLE `sign_ins` (
	`position` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` text NOT NULL,
	`what` text NOT NULL,
	`account` text NOT NULL,
	`address` text NOT NULL,
	`agent` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `sign_ins_account` ON `sign_ins` (`account`,`at`);