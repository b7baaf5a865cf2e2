-- What was never held to may name what is not there: nobody chose that, so nothing is chosen.
UPDATE `lines` SET `option_id` = NULL WHERE `option_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `work_options` WHERE `work_options`.`line_id` = `lines`.`id` AND `work_options`.`id` = `lines`.`option_id`);--> statement-breakpoint
UPDATE `lines` SET `rule_id` = NULL WHERE `rule_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `rules` WHERE `rules`.`authority_id` = `lines`.`authority_id` AND `rules`.`id` = `lines`.`rule_id`);--> statement-breakpoint
UPDATE `observations` SET `picture_id` = NULL WHERE `picture_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `uploads` WHERE `uploads`.`line_id` = `observations`.`line_id` AND `uploads`.`id` = `observations`.`picture_id`);--> statement-breakpoint
UPDATE `scope_items` SET `option_id` = NULL WHERE `option_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `work_options` WHERE `work_options`.`line_id` = `scope_items`.`line_id` AND `work_options`.`id` = `scope_items`.`option_id`);--> statement-breakpoint
UPDATE `scope_items` SET `dropped_by_id` = NULL WHERE `dropped_by_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `change_orders` WHERE `change_orders`.`line_id` = `scope_items`.`line_id` AND `change_orders`.`id` = `scope_items`.`dropped_by_id`);--> statement-breakpoint
UPDATE `splits` SET `option_id` = NULL WHERE `option_id` IS NOT NULL AND NOT EXISTS (SELECT 1 FROM `work_options` WHERE `work_options`.`line_id` = `splits`.`line_id` AND `work_options`.`id` = `splits`.`option_id`);--> statement-breakpoint
PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_consents` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text NOT NULL,
	`state` text NOT NULL,
	`state_on` text NOT NULL,
	`split_id` text,
	`amount_cents` integer,
	`recording_number` text NOT NULL,
	`upload_id` text,
	`note` text NOT NULL,
	`rests_on_id` text,
	`entered_by` text DEFAULT '' NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`split_id`) REFERENCES `splits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`rests_on_id`) REFERENCES `consents`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_consents`("line_id", "id", "position", "kind", "party_id", "property_id", "state", "state_on", "split_id", "amount_cents", "recording_number", "upload_id", "note", "rests_on_id", "entered_by") SELECT "line_id", "id", "position", "kind", "party_id", "property_id", "state", "state_on", "split_id", "amount_cents", "recording_number", "upload_id", "note", "rests_on_id", "entered_by" FROM `consents`;--> statement-breakpoint
DROP TABLE `consents`;--> statement-breakpoint
ALTER TABLE `__new_consents` RENAME TO `consents`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
CREATE TABLE `__new_ledger_entries` (
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
	FOREIGN KEY (`line_id`,`reverses_id`) REFERENCES `ledger_entries`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_ledger_entries`("line_id", "id", "position", "number", "kind", "party_id", "property_id", "amount_cents", "on", "due_on", "split_id", "reverses_id", "method", "reference", "upload_id", "note", "entered_by", "entered_at") SELECT "line_id", "id", "position", "number", "kind", "party_id", "property_id", "amount_cents", "on", "due_on", "split_id", "reverses_id", "method", "reference", "upload_id", "note", "entered_by", "entered_at" FROM `ledger_entries`;--> statement-breakpoint
DROP TABLE `ledger_entries`;--> statement-breakpoint
ALTER TABLE `__new_ledger_entries` RENAME TO `ledger_entries`;--> statement-breakpoint
CREATE UNIQUE INDEX `ledger_entries_number` ON `ledger_entries` (`line_id`,`number`);--> statement-breakpoint
CREATE UNIQUE INDEX `ledger_entries_reverses` ON `ledger_entries` (`line_id`,`reverses_id`);--> statement-breakpoint
CREATE TABLE `__new_lines` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`town` text NOT NULL,
	`opened_on` text NOT NULL,
	`closed_on` text,
	`upper_end_cft` integer,
	`material` text NOT NULL,
	`diameter_in` real,
	`main_station_cft` integer,
	`main_note` text NOT NULL,
	`bearing_deg` real,
	`bearing_from` text DEFAULT '' NOT NULL,
	`authority_id` text,
	`rule_id` text,
	`plumbing_code` text,
	`least_slope` text,
	`option_id` text,
	`statement_others` integer DEFAULT false NOT NULL,
	`statement_rules` integer DEFAULT false NOT NULL,
	`warranty_months` integer,
	`warranty_covers` text DEFAULT '' NOT NULL,
	`note` text NOT NULL,
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`authority_id`,`rule_id`) REFERENCES `rules`(`authority_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`id`,`option_id`) REFERENCES `work_options`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_lines`("id", "name", "town", "opened_on", "closed_on", "upper_end_cft", "material", "diameter_in", "main_station_cft", "main_note", "bearing_deg", "bearing_from", "authority_id", "rule_id", "plumbing_code", "least_slope", "option_id", "statement_others", "statement_rules", "warranty_months", "warranty_covers", "note") SELECT "id", "name", "town", "opened_on", "closed_on", "upper_end_cft", "material", "diameter_in", "main_station_cft", "main_note", "bearing_deg", "bearing_from", "authority_id", "rule_id", "plumbing_code", "least_slope", "option_id", "statement_others", "statement_rules", "warranty_months", "warranty_covers", "note" FROM `lines`;--> statement-breakpoint
DROP TABLE `lines`;--> statement-breakpoint
ALTER TABLE `__new_lines` RENAME TO `lines`;--> statement-breakpoint
CREATE TABLE `__new_observations` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`kind` text NOT NULL,
	`counter_cft` integer NOT NULL,
	`to_counter_cft` integer,
	`clock` real,
	`fault` text,
	`degree` text,
	`reduction` real,
	`material` text NOT NULL,
	`diameter_in` real,
	`fitting` text NOT NULL,
	`reading` text DEFAULT 'read' NOT NULL,
	`uncertainty_cft` integer,
	`video_s` real,
	`picture_id` text,
	`water_depth_in` real,
	`quote` text DEFAULT '' NOT NULL,
	`tie_in_id` text,
	`code` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`picture_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_observations`("line_id", "id", "position", "run_id", "kind", "counter_cft", "to_counter_cft", "clock", "fault", "degree", "reduction", "material", "diameter_in", "fitting", "reading", "uncertainty_cft", "video_s", "picture_id", "water_depth_in", "quote", "tie_in_id", "code", "note") SELECT "line_id", "id", "position", "run_id", "kind", "counter_cft", "to_counter_cft", "clock", "fault", "degree", "reduction", "material", "diameter_in", "fitting", "reading", "uncertainty_cft", "video_s", "picture_id", "water_depth_in", "quote", "tie_in_id", "code", "note" FROM `observations`;--> statement-breakpoint
DROP TABLE `observations`;--> statement-breakpoint
ALTER TABLE `__new_observations` RENAME TO `observations`;--> statement-breakpoint
CREATE TABLE `__new_scope_items` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`kind` text DEFAULT 'unknown' NOT NULL,
	`work` text NOT NULL,
	`place` text NOT NULL,
	`from_cft` integer,
	`to_cft` integer,
	`tie_in_id` text,
	`quantity_hundredths` integer NOT NULL,
	`unit` text NOT NULL,
	`rate_cents` integer NOT NULL,
	`markup_bp` integer NOT NULL,
	`tax_bp` integer NOT NULL,
	`spread` text NOT NULL,
	`rule` text,
	`payer_id` text,
	`alleged_cause` text NOT NULL,
	`option_id` text,
	`added_by_id` text,
	`dropped_by_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`payer_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`option_id`) REFERENCES `work_options`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`added_by_id`) REFERENCES `change_orders`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`dropped_by_id`) REFERENCES `change_orders`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_scope_items`("line_id", "id", "position", "title", "kind", "work", "place", "from_cft", "to_cft", "tie_in_id", "quantity_hundredths", "unit", "rate_cents", "markup_bp", "tax_bp", "spread", "rule", "payer_id", "alleged_cause", "option_id", "added_by_id", "dropped_by_id", "note") SELECT "line_id", "id", "position", "title", "kind", "work", "place", "from_cft", "to_cft", "tie_in_id", "quantity_hundredths", "unit", "rate_cents", "markup_bp", "tax_bp", "spread", "rule", "payer_id", "alleged_cause", "option_id", "added_by_id", "dropped_by_id", "note" FROM `scope_items`;--> statement-breakpoint
DROP TABLE `scope_items`;--> statement-breakpoint
ALTER TABLE `__new_scope_items` RENAME TO `scope_items`;--> statement-breakpoint
CREATE TABLE `__new_splits` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`number` integer NOT NULL,
	`rule` text NOT NULL,
	`fault_station_cft` integer,
	`payer_id` text,
	`unknown_shares` text NOT NULL,
	`reason` text NOT NULL,
	`chosen_by` text NOT NULL,
	`chosen_on` text NOT NULL,
	`total_cents` integer NOT NULL,
	`shares_json` text NOT NULL,
	`basis` text NOT NULL,
	`option_id` text,
	`sent_at` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`payer_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`option_id`) REFERENCES `work_options`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
INSERT INTO `__new_splits`("line_id", "id", "position", "number", "rule", "fault_station_cft", "payer_id", "unknown_shares", "reason", "chosen_by", "chosen_on", "total_cents", "shares_json", "basis", "option_id", "sent_at") SELECT "line_id", "id", "position", "number", "rule", "fault_station_cft", "payer_id", "unknown_shares", "reason", "chosen_by", "chosen_on", "total_cents", "shares_json", "basis", "option_id", "sent_at" FROM `splits`;--> statement-breakpoint
DROP TABLE `splits`;--> statement-breakpoint
ALTER TABLE `__new_splits` RENAME TO `splits`;--> statement-breakpoint
CREATE UNIQUE INDEX `splits_number` ON `splits` (`line_id`,`number`);