CREATE TABLE `agreement_steps` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`agreement_id` text NOT NULL,
	`kind` text NOT NULL,
	`on` text NOT NULL,
	`by` text NOT NULL,
	`party_id` text,
	`number` text NOT NULL,
	`upload_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`agreement_id`) REFERENCES `agreements`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "agreement_steps_kind" CHECK("agreement_steps"."kind" in ('drafted', 'reviewed', 'returned', 'signed', 'notarised', 'recorded', 'number-filed', 'given-up'))
);
--> statement-breakpoint
CREATE TABLE `alignments` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`record_id` text,
	`shift_cft` integer NOT NULL,
	`scale_ppm` integer NOT NULL,
	`state` text NOT NULL,
	`reason` text NOT NULL,
	`decided_by` text NOT NULL,
	`decided_on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`record_id`) REFERENCES `records`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `change_orders` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`number` integer NOT NULL,
	`title` text NOT NULL,
	`reason` text NOT NULL,
	`state` text NOT NULL,
	`ordered_by` text NOT NULL,
	`ordered_on` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "change_orders_state" CHECK("change_orders"."state" in ('proposed', 'agreed', 'refused'))
);
--> statement-breakpoint
CREATE TABLE `fixture_counts` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`unit_id` text,
	`fixture` text NOT NULL,
	`count` integer NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`unit_id`) REFERENCES `units`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "fixture_counts_fixture" CHECK("fixture_counts"."fixture" in ('bathroom-group', 'water-closet', 'bathtub', 'shower', 'lavatory', 'kitchen-sink', 'dishwasher', 'clothes-washer', 'laundry-sink', 'floor-drain'))
);
--> statement-breakpoint
CREATE TABLE `ledger_entries` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`number` integer NOT NULL,
	`kind` text NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text NOT NULL,
	`amount_cents` integer NOT NULL,
	`on` text NOT NULL,
	`due_on` text,
	`split_id` text,
	`reverses_id` text,
	`method` text,
	`reference` text NOT NULL,
	`upload_id` text,
	`note` text NOT NULL,
	`entered_by` text NOT NULL,
	`entered_at` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`split_id`) REFERENCES `splits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "ledger_entries_kind" CHECK("ledger_entries"."kind" in ('invoice', 'deposit', 'payment', 'credit', 'refund', 'reversal')),
	CONSTRAINT "ledger_entries_method" CHECK("ledger_entries"."method" in ('check', 'card', 'bank-transfer', 'cash', 'other'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `ledger_entries_number` ON `ledger_entries` (`line_id`,`number`);--> statement-breakpoint
CREATE UNIQUE INDEX `ledger_entries_reverses` ON `ledger_entries` (`line_id`,`reverses_id`);--> statement-breakpoint
CREATE TABLE `levels` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`station_cft` integer NOT NULL,
	`ground_cft` integer,
	`depth_cft` integer,
	`invert_cft` integer,
	`method` text NOT NULL,
	`uncertainty_cft` integer,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "levels_method" CHECK("levels"."method" in ('locator', 'level', 'cleanout-drop', 'pothole', 'as-built', 'other'))
);
--> statement-breakpoint
CREATE TABLE `link_visits` (
	`position` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`id` text NOT NULL,
	`link_id` text NOT NULL,
	`at` text NOT NULL,
	`what` text NOT NULL,
	`address` text NOT NULL,
	`agent` text NOT NULL,
	FOREIGN KEY (`link_id`) REFERENCES `links`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `link_visits_link` ON `link_visits` (`link_id`);--> statement-breakpoint
CREATE TABLE `links` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`notice_id` text NOT NULL,
	`party_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`created_by` text NOT NULL,
	`created_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`revoked_at` text,
	`revoked_by` text NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `links_token` ON `links` (`token_hash`);--> statement-breakpoint
CREATE INDEX `links_line` ON `links` (`line_id`);--> statement-breakpoint
CREATE TABLE `narrations` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`text` text NOT NULL,
	`added_by` text NOT NULL,
	`added_at` text NOT NULL,
	`decided_json` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `work_options` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`kind` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "work_options_kind" CHECK("work_options"."kind" in ('spot-repair', 'lining', 'full-replacement', 'separate-lines', 'other'))
);
--> statement-breakpoint
CREATE TABLE `refusal_steps` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`title` text NOT NULL,
	`detail` text NOT NULL,
	`days` integer,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "refusal_steps_kind" CHECK("refusal_steps"."kind" in ('notice', 'mediation', 'authority-order', 'arbitration', 'court', 'other'))
);
--> statement-breakpoint
CREATE TABLE `rulings` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`tie_in_id` text NOT NULL,
	`kind` text NOT NULL,
	`decided_by` text NOT NULL,
	`decided_on` text NOT NULL,
	`due_on` text,
	`reference` text NOT NULL,
	`upload_id` text,
	`note` text NOT NULL,
	`entered_by` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rulings_kind" CHECK("rulings"."kind" in ('legalise', 'disconnect', 'own-connection', 'accepted-as-legacy', 'cap', 'record-corrected', 'evidence-asked'))
);
--> statement-breakpoint
CREATE TABLE `signatures` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`consent_id` text NOT NULL,
	`link_id` text NOT NULL,
	`signed_name` text NOT NULL,
	`drawing_id` text,
	`intent` text NOT NULL,
	`disclosure` text NOT NULL,
	`disclosure_version` text NOT NULL,
	`document_id` text NOT NULL,
	`document_hash` text NOT NULL,
	`signed_at` text NOT NULL,
	`zone` text NOT NULL,
	`address` text NOT NULL,
	`agent` text NOT NULL,
	`views_json` text NOT NULL,
	`copy_message_id` text NOT NULL,
	`previous_hash` text NOT NULL,
	`hash` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`consent_id`) REFERENCES `consents`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`document_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`drawing_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `test_days` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`on` text NOT NULL,
	`control_property_id` text,
	`stops_json` text NOT NULL,
	`note` text NOT NULL,
	`planned_by` text NOT NULL,
	`planned_on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`control_property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `videos` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`name` text NOT NULL,
	`type` text NOT NULL,
	`bytes` integer NOT NULL,
	`sha256` text NOT NULL,
	`added_by` text NOT NULL,
	`added_at` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "videos_type" CHECK("videos"."type" in ('video/mp4', 'video/webm'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `videos_run` ON `videos` (`line_id`,`run_id`);--> statement-breakpoint
CREATE TABLE `__new_jobs` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`kind` text NOT NULL,
	`subject_ids_json` text NOT NULL,
	`state` text NOT NULL,
	`attempts` integer NOT NULL,
	`locked_by` text,
	`lease_until` text,
	`next_try_at` text NOT NULL,
	`problem` text NOT NULL,
	`upload_id` text,
	`asked_by` text NOT NULL,
	`asked_at` text NOT NULL,
	`ended_at` text,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "jobs_kind" CHECK("__new_jobs"."kind" in ('letters', 'packet', 'statements', 'accounts', 'agreement')),
	CONSTRAINT "jobs_state" CHECK("__new_jobs"."state" in ('waiting', 'running', 'done', 'failed'))
);
--> statement-breakpoint
INSERT INTO `__new_jobs`("id", "line_id", "kind", "subject_ids_json", "state", "attempts", "locked_by", "lease_until", "next_try_at", "problem", "upload_id", "asked_by", "asked_at", "ended_at") SELECT "id", "line_id", "kind", "notice_ids_json", "state", "attempts", "locked_by", "lease_until", "next_try_at", "problem", "upload_id", "asked_by", "asked_at", "ended_at" FROM `jobs`;--> statement-breakpoint
DROP TABLE `jobs`;--> statement-breakpoint
ALTER TABLE `__new_jobs` RENAME TO `jobs`;--> statement-breakpoint
CREATE INDEX `jobs_state` ON `jobs` (`state`,`next_try_at`);--> statement-breakpoint
CREATE INDEX `jobs_line` ON `jobs` (`line_id`);--> statement-breakpoint
CREATE TABLE `__new_outbox` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`notice_id` text,
	`delivery_id` text,
	`upload_id` text,
	`to_address` text NOT NULL,
	`to_name` text NOT NULL,
	`subject` text NOT NULL,
	`text` text NOT NULL,
	`message_id` text NOT NULL,
	`state` text NOT NULL,
	`attempts` integer NOT NULL,
	`locked_by` text,
	`lease_until` text,
	`next_try_at` text NOT NULL,
	`problem` text NOT NULL,
	`created_at` text NOT NULL,
	`sent_at` text,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`delivery_id`) REFERENCES `deliveries`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "outbox_state" CHECK("__new_outbox"."state" in ('waiting', 'sending', 'sent', 'failed'))
);
--> statement-breakpoint
INSERT INTO `__new_outbox`("id", "line_id", "notice_id", "delivery_id", "upload_id", "to_address", "to_name", "subject", "text", "message_id", "state", "attempts", "locked_by", "lease_until", "next_try_at", "problem", "created_at", "sent_at") SELECT "id", "line_id", "notice_id", "delivery_id", NULL, "to_address", "to_name", "subject", "text", "message_id", "state", "attempts", "locked_by", "lease_until", "next_try_at", "problem", "created_at", "sent_at" FROM `outbox`;--> statement-breakpoint
DROP TABLE `outbox`;--> statement-breakpoint
ALTER TABLE `__new_outbox` RENAME TO `outbox`;--> statement-breakpoint
CREATE INDEX `outbox_state` ON `outbox` (`state`,`next_try_at`);--> statement-breakpoint
CREATE UNIQUE INDEX `outbox_message` ON `outbox` (`message_id`);--> statement-breakpoint
ALTER TABLE `lines` ADD `plumbing_code` text;--> statement-breakpoint
ALTER TABLE `lines` ADD `least_slope` text;--> statement-breakpoint
ALTER TABLE `lines` ADD `option_id` text;--> statement-breakpoint
ALTER TABLE `lines` ADD `statement_others` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `lines` ADD `statement_rules` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `observations` ADD `reading` text DEFAULT 'read' NOT NULL;--> statement-breakpoint
ALTER TABLE `observations` ADD `picture_id` text;--> statement-breakpoint
ALTER TABLE `observations` ADD `quote` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `rules` ADD `clearing_by` text DEFAULT 'owners' NOT NULL;--> statement-breakpoint
ALTER TABLE `rules` ADD `repair_by` text DEFAULT 'authority' NOT NULL;--> statement-breakpoint
ALTER TABLE `rules` ADD `replacement_by` text DEFAULT 'authority' NOT NULL;--> statement-breakpoint
ALTER TABLE `runs` ADD `ended` text DEFAULT 'unknown' NOT NULL;--> statement-breakpoint
ALTER TABLE `scope_items` ADD `option_id` text;--> statement-breakpoint
ALTER TABLE `scope_items` ADD `added_by_id` text;--> statement-breakpoint
ALTER TABLE `scope_items` ADD `dropped_by_id` text;--> statement-breakpoint
ALTER TABLE `splits` ADD `option_id` text;