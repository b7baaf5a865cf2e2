CREATE TABLE `incoming` (
	`key` text PRIMARY KEY NOT NULL,
	`at` text NOT NULL,
	`what` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `mail_rules` (
	`id` integer PRIMARY KEY NOT NULL,
	`per_hour` integer
);
--> statement-breakpoint
CREATE TABLE `mailbox` (
	`id` integer PRIMARY KEY NOT NULL,
	`validity` text,
	`uid` integer DEFAULT 0 NOT NULL,
	`looked_at` text,
	`problem` text DEFAULT '' NOT NULL
);
