CREATE TABLE `agreements` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`recording_number` text NOT NULL,
	`recorded_on` text,
	`from_station_cft` integer,
	`to_station_cft` integer,
	`terms` text NOT NULL,
	`shares_json` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `anchors` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`kind` text NOT NULL,
	`counter_cft` integer NOT NULL,
	`station_cft` integer NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "anchors_kind" CHECK("anchors"."kind" in ('main-connection', 'surface-locate', 'cleanout', 'material-change', 'property-line', 'settled-tie-in'))
);
--> statement-breakpoint
CREATE TABLE `authorities` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`office` text NOT NULL,
	`address_json` text NOT NULL,
	`phone` text NOT NULL,
	`email` text NOT NULL,
	`note` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `clock_rules` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`event` text NOT NULL,
	`count` integer NOT NULL,
	`unit` text NOT NULL,
	`way` text NOT NULL,
	`counts_event_day` integer NOT NULL,
	`full_days` integer NOT NULL,
	`roll` text NOT NULL,
	`mail_days` integer NOT NULL,
	`meaning` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "clock_rules_event" CHECK("clock_rules"."event" in ('letter-sent', 'certified-letter-mailed', 'split-sent', 'locate-called', 'work-begins', 'permit-issued', 'permit-submitted', 'corrections-asked', 'authority-order', 'tenant-entry', 'drains-paused', 'inspection-booked')),
	CONSTRAINT "clock_rules_unit" CHECK("clock_rules"."unit" in ('calendar-days', 'business-days', 'hours', 'months')),
	CONSTRAINT "clock_rules_way" CHECK("clock_rules"."way" in ('after', 'before')),
	CONSTRAINT "clock_rules_roll" CHECK("clock_rules"."roll" in ('none', 'forwards', 'backwards')),
	CONSTRAINT "clock_rules_meaning" CHECK("clock_rules"."meaning" in ('due-by', 'not-before', 'not-after', 'expires'))
);
--> statement-breakpoint
CREATE TABLE `consents` (
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
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`split_id`) REFERENCES `splits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "consents_kind" CHECK("consents"."kind" in ('enter', 'dig', 'pay', 'agreement-signed', 'agreement-notarised', 'agreement-recorded')),
	CONSTRAINT "consents_state" CHECK("consents"."state" in ('asked', 'given', 'refused', 'withdrawn'))
);
--> statement-breakpoint
CREATE TABLE `crossings` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`from_cft` integer NOT NULL,
	`to_cft` integer NOT NULL,
	`easement` text NOT NULL,
	`recording_number` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "crossings_easement" CHECK("crossings"."easement" in ('recorded', 'none', 'unknown'))
);
--> statement-breakpoint
CREATE TABLE `deliveries` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`notice_id` text NOT NULL,
	`method` text NOT NULL,
	`sent_on` text NOT NULL,
	`by` text NOT NULL,
	`tracking` text NOT NULL,
	`outcome` text NOT NULL,
	`outcome_on` text,
	`proof_upload_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`notice_id`) REFERENCES `notices`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`proof_upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "deliveries_method" CHECK("deliveries"."method" in ('first-class', 'certified', 'mail-message', 'by-hand', 'posted', 'door-hanger')),
	CONSTRAINT "deliveries_outcome" CHECK("deliveries"."outcome" in ('on-its-way', 'delivered', 'returned', 'unclaimed', 'failed'))
);
--> statement-breakpoint
CREATE TABLE `entries` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`record_id` text NOT NULL,
	`label` text NOT NULL,
	`distance_cft` integer,
	`side` text NOT NULL,
	`diameter_in` real,
	`material` text NOT NULL,
	`fitting` text NOT NULL,
	`property_id` text,
	`explanation` text NOT NULL,
	`explained_by` text NOT NULL,
	`explained_on` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`record_id`) REFERENCES `records`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "entries_side" CHECK("entries"."side" in ('left', 'right', 'crown', 'unknown')),
	CONSTRAINT "entries_material" CHECK("entries"."material" in ('vitrified-clay', 'concrete', 'cast-iron', 'ductile-iron', 'pvc', 'abs', 'polyethylene', 'bituminous-fibre', 'asbestos-cement', 'cured-in-place-liner', 'unknown')),
	CONSTRAINT "entries_fitting" CHECK("entries"."fitting" in ('wye', 'tee', 'saddle', 'break-in', 'unknown'))
);
--> statement-breakpoint
CREATE TABLE `dated_events` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`event` text NOT NULL,
	`on` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "dated_events_event" CHECK("dated_events"."event" in ('letter-sent', 'certified-letter-mailed', 'split-sent', 'locate-called', 'work-begins', 'permit-issued', 'permit-submitted', 'corrections-asked', 'authority-order', 'tenant-entry', 'drains-paused', 'inspection-booked'))
);
--> statement-breakpoint
CREATE TABLE `fees` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`amount_cents` integer NOT NULL,
	`per` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "fees_per" CHECK("fees"."per" in ('permit', 'connection', 'inspection'))
);
--> statement-breakpoint
CREATE TABLE `gaps` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`from_counter_cft` integer NOT NULL,
	`to_counter_cft` integer NOT NULL,
	`cause` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "gaps_cause" CHECK("gaps"."cause" in ('under-water', 'blocked', 'not-in-view', 'not-recorded'))
);
--> statement-breakpoint
CREATE TABLE `history` (
	`position` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`line_id` text,
	`id` text NOT NULL,
	`at` text NOT NULL,
	`by` text NOT NULL,
	`action` text NOT NULL,
	`sentence` text NOT NULL,
	`detail_json` text NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `history_line` ON `history` (`line_id`,`id`);--> statement-breakpoint
CREATE TABLE `holidays` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`day` text NOT NULL,
	`name` text NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `inspections` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`permit_id` text NOT NULL,
	`title` text NOT NULL,
	`booked_for` text NOT NULL,
	`inspector` text NOT NULL,
	`result` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`permit_id`) REFERENCES `permits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "inspections_result" CHECK("inspections"."result" in ('booked', 'passed', 'failed', 'cancelled'))
);
--> statement-breakpoint
CREATE TABLE `jobs` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`kind` text NOT NULL,
	`notice_ids_json` text NOT NULL,
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
	CONSTRAINT "jobs_kind" CHECK("jobs"."kind" in ('letters', 'packet')),
	CONSTRAINT "jobs_state" CHECK("jobs"."state" in ('waiting', 'running', 'done', 'failed'))
);
--> statement-breakpoint
CREATE INDEX `jobs_state` ON `jobs` (`state`,`next_try_at`);--> statement-breakpoint
CREATE INDEX `jobs_line` ON `jobs` (`line_id`);--> statement-breakpoint
CREATE TABLE `lines` (
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
	`authority_id` text,
	`rule_id` text,
	`note` text NOT NULL,
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "lines_material" CHECK("lines"."material" in ('vitrified-clay', 'concrete', 'cast-iron', 'ductile-iron', 'pvc', 'abs', 'polyethylene', 'bituminous-fibre', 'asbestos-cement', 'cured-in-place-liner', 'unknown'))
);
--> statement-breakpoint
CREATE TABLE `locate_tickets` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`number` text NOT NULL,
	`called_on` text NOT NULL,
	`work_begins_on` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `notices` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text,
	`tie_in_id` text,
	`split_id` text,
	`language` text NOT NULL,
	`state` text NOT NULL,
	`created_on` text NOT NULL,
	`created_by` text NOT NULL,
	`reply_by` text,
	`own_words` text NOT NULL,
	`frozen_json` text,
	`frozen_hash` text,
	`sent_at` text,
	`upload_id` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`split_id`) REFERENCES `splits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "notices_kind" CHECK("notices"."kind" in ('finding', 'tie-in-inquiry', 'test-visit', 'proposed-split', 'entry-consent', 'joint-agreement', 'work-start', 'drain-pause', 'spill', 'share-demand', 'authority-response', 'close-out')),
	CONSTRAINT "notices_language" CHECK("notices"."language" in ('en', 'es')),
	CONSTRAINT "notices_state" CHECK("notices"."state" in ('draft', 'sent'))
);
--> statement-breakpoint
CREATE TABLE `observations` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`run_id` text NOT NULL,
	`kind` text NOT NULL,
	`counter_cft` integer NOT NULL,
	`to_counter_cft` integer,
	`clock` real,
	`fault` text,
	`diameter_in` real,
	`material` text NOT NULL,
	`fitting` text NOT NULL,
	`video_s` real,
	`tie_in_id` text,
	`code` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "observations_kind" CHECK("observations"."kind" in ('tie-in', 'fault', 'material', 'water', 'deposit', 'blockage', 'bend', 'cleanout', 'crossing', 'remark')),
	CONSTRAINT "observations_fault" CHECK("observations"."fault" in ('crack', 'broken', 'hole', 'offset-joint', 'open-joint', 'roots', 'belly', 'deformed', 'collapsed', 'infiltration', 'protruding-tie-in', 'worn-surface')),
	CONSTRAINT "observations_material" CHECK("observations"."material" in ('vitrified-clay', 'concrete', 'cast-iron', 'ductile-iron', 'pvc', 'abs', 'polyethylene', 'bituminous-fibre', 'asbestos-cement', 'cured-in-place-liner', 'unknown')),
	CONSTRAINT "observations_fitting" CHECK("observations"."fitting" in ('wye', 'tee', 'saddle', 'break-in', 'unknown'))
);
--> statement-breakpoint
CREATE TABLE `office` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`licence` text NOT NULL,
	`licence_expires_on` text,
	`bond` text NOT NULL,
	`bond_expires_on` text,
	`insurance` text NOT NULL,
	`insurance_expires_on` text,
	`address_json` text NOT NULL,
	`phone` text NOT NULL,
	`email` text NOT NULL,
	`zone` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `outbox` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`notice_id` text NOT NULL,
	`delivery_id` text NOT NULL,
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
	CONSTRAINT "outbox_state" CHECK("outbox"."state" in ('waiting', 'sending', 'sent', 'failed'))
);
--> statement-breakpoint
CREATE INDEX `outbox_state` ON `outbox` (`state`,`next_try_at`);--> statement-breakpoint
CREATE UNIQUE INDEX `outbox_message` ON `outbox` (`message_id`);--> statement-breakpoint
CREATE TABLE `pairings` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`entry_id` text NOT NULL,
	`tie_in_id` text NOT NULL,
	`state` text NOT NULL,
	`distance_cft` integer,
	`reason` text NOT NULL,
	`decided_by` text NOT NULL,
	`decided_on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`entry_id`) REFERENCES `entries`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "pairings_state" CHECK("pairings"."state" in ('accepted', 'refused'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `pairings_pair` ON `pairings` (`line_id`,`entry_id`,`tie_in_id`);--> statement-breakpoint
CREATE TABLE `parties` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`name` text NOT NULL,
	`mailing_json` text,
	`email` text NOT NULL,
	`phone` text NOT NULL,
	`language` text NOT NULL,
	`needs` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "parties_kind" CHECK("parties"."kind" in ('person', 'firm', 'trust', 'estate', 'association', 'public-body')),
	CONSTRAINT "parties_language" CHECK("parties"."language" in ('en', 'es'))
);
--> statement-breakpoint
CREATE TABLE `permit_steps` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`permit_id` text NOT NULL,
	`state` text NOT NULL,
	`on` text NOT NULL,
	`by` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`permit_id`) REFERENCES `permits`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "permit_steps_state" CHECK("permit_steps"."state" in ('drafting', 'waiting-on-signatures', 'submitted', 'returned-incomplete', 'in-review', 'corrections', 'approved-fees-due', 'issued', 'working', 'inspection-requested', 'inspection-failed', 'passed-may-backfill', 'as-built-submitted', 'as-built-rejected', 'final', 'expired', 'extended', 'withdrawn', 'superseded'))
);
--> statement-breakpoint
CREATE TABLE `permits` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`number` text NOT NULL,
	`expires_on` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "permits_kind" CHECK("permits"."kind" in ('side-sewer', 'street-use', 'connection', 'other'))
);
--> statement-breakpoint
CREATE TABLE `points` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`station_cft` integer NOT NULL,
	`depth_cft` integer,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "points_kind" CHECK("points"."kind" in ('right-of-way-line', 'curb', 'property-line', 'cleanout', 'foundation', 'manhole', 'easement-edge'))
);
--> statement-breakpoint
CREATE TABLE `properties` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`address_json` text NOT NULL,
	`parcel` text NOT NULL,
	`legal_description` text NOT NULL,
	`stake` text NOT NULL,
	`weight` real,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "properties_stake" CHECK("properties"."stake" in ('connected', 'candidate', 'crossed', 'neighbour'))
);
--> statement-breakpoint
CREATE TABLE `records` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`title` text NOT NULL,
	`number` text NOT NULL,
	`dated` text NOT NULL,
	`measured_from` text NOT NULL,
	`length_cft` integer,
	`obtained_on` text,
	`upload_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "records_kind" CHECK("records"."kind" in ('card', 'drawing', 'permit', 'as-built', 'other')),
	CONSTRAINT "records_measured_from" CHECK("records"."measured_from" in ('main', 'upper-end', 'unknown'))
);
--> statement-breakpoint
CREATE TABLE `replies` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`notice_id` text NOT NULL,
	`kind` text NOT NULL,
	`received_on` text NOT NULL,
	`taken_by` text NOT NULL,
	`words` text NOT NULL,
	`upload_id` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`notice_id`) REFERENCES `notices`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "replies_kind" CHECK("replies"."kind" in ('agrees', 'disagrees', 'asks', 'offers-a-record', 'books-a-test', 'accepts-tie-in', 'other'))
);
--> statement-breakpoint
CREATE TABLE `requirement_marks` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`requirement_id` text NOT NULL,
	`state` text NOT NULL,
	`upload_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "requirement_marks_state" CHECK("requirement_marks"."state" in ('in-hand', 'missing', 'does-not-apply'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `requirement_marks_requirement` ON `requirement_marks` (`line_id`,`requirement_id`);--> statement-breakpoint
CREATE TABLE `requirements` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`sheet` text NOT NULL,
	`title` text NOT NULL,
	`detail` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`mandatory` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "requirements_sheet" CHECK("requirements"."sheet" in ('application', 'line-drawing', 'schedule-of-connections', 'observation-log', 'tests', 'scope', 'responsibility', 'split', 'consents', 'proof-of-notice', 'contractor-standing', 'holds-and-waivers', 'upload'))
);
--> statement-breakpoint
CREATE TABLE `revisions` (
	`line_id` text NOT NULL,
	`table_name` text NOT NULL,
	`revision` integer NOT NULL,
	`by` text NOT NULL,
	`at` text NOT NULL,
	PRIMARY KEY(`line_id`, `table_name`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `roles` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`party_id` text NOT NULL,
	`property_id` text NOT NULL,
	`role` text NOT NULL,
	`unit_id` text,
	`capacity` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`unit_id`) REFERENCES `units`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "roles_role" CHECK("roles"."role" in ('owner', 'occupant', 'manager', 'association', 'contract-purchaser', 'crossed-lot-owner'))
);
--> statement-breakpoint
CREATE TABLE `rules` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
	`pattern` text NOT NULL,
	`boundary` text NOT NULL,
	`shared_rule` text NOT NULL,
	`citation` text NOT NULL,
	`url` text NOT NULL,
	`as_of` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "rules_pattern" CHECK("rules"."pattern" in ('owners-to-main', 'owners-including-tap', 'owners-from-outside-of-main', 'authority-in-right-of-way', 'divided-at-cleanout', 'owners-own-authority-mends-lower', 'by-kind-of-work', 'authority-when-proven', 'unclear')),
	CONSTRAINT "rules_boundary" CHECK("rules"."boundary" in ('main-connection', 'right-of-way-line', 'curb', 'property-line', 'cleanout', 'foundation')),
	CONSTRAINT "rules_shared_rule" CHECK("rules"."shared_rule" in ('all-whose-flow-passes', 'next-downstream-tie-in', 'all-connected-equally', 'parties-decide', 'unclear'))
);
--> statement-breakpoint
CREATE TABLE `runs` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`ran_on` text NOT NULL,
	`operator` text NOT NULL,
	`access_point` text NOT NULL,
	`direction` text NOT NULL,
	`zero_at` text NOT NULL,
	`from_counter_cft` integer NOT NULL,
	`to_counter_cft` integer,
	`crossing_seen` text NOT NULL,
	`uncertainty_cft` integer,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "runs_direction" CHECK("runs"."direction" in ('upstream', 'downstream')),
	CONSTRAINT "runs_crossing_seen" CHECK("runs"."crossing_seen" in ('yes', 'no', 'cannot-tell'))
);
--> statement-breakpoint
CREATE TABLE `scope_items` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`title` text NOT NULL,
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
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`payer_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "scope_items_work" CHECK("scope_items"."work" in ('clearing', 'repair', 'replacement')),
	CONSTRAINT "scope_items_place" CHECK("scope_items"."place" in ('point', 'stretch', 'branch', 'general')),
	CONSTRAINT "scope_items_spread" CHECK("scope_items"."spread" in ('by-placed-cost', 'equally')),
	CONSTRAINT "scope_items_rule" CHECK("scope_items"."rule" in ('equal', 'per-unit', 'portion-used', 'upstream-of-fault', 'reach-owner', 'weights', 'recorded-shares', 'single-payer'))
);
--> statement-breakpoint
CREATE TABLE `sessions` (
	`token_hash` text PRIMARY KEY NOT NULL,
	`user_id` text NOT NULL,
	`started_at` text NOT NULL,
	`idle_until` text NOT NULL,
	`ends_at` text NOT NULL,
	FOREIGN KEY (`user_id`) REFERENCES `users`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sessions_user` ON `sessions` (`user_id`);--> statement-breakpoint
CREATE TABLE `sign_in_tries` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`key` text NOT NULL,
	`at` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `sign_in_tries_key` ON `sign_in_tries` (`key`,`at`);--> statement-breakpoint
CREATE TABLE `splits` (
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
	`sent_at` text,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`payer_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "splits_rule" CHECK("splits"."rule" in ('equal', 'per-unit', 'portion-used', 'upstream-of-fault', 'reach-owner', 'weights', 'recorded-shares', 'single-payer')),
	CONSTRAINT "splits_unknown_shares" CHECK("splits"."unknown_shares" in ('carried', 'held-apart'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `splits_number` ON `splits` (`line_id`,`number`);--> statement-breakpoint
CREATE TABLE `tests` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`tie_in_id` text NOT NULL,
	`property_id` text,
	`unit_id` text,
	`kind` text NOT NULL,
	`performed_on` text NOT NULL,
	`fixture` text NOT NULL,
	`colour` text NOT NULL,
	`quantity` text NOT NULL,
	`started_at` text NOT NULL,
	`first_seen_at` text NOT NULL,
	`seen_at_cft` integer,
	`wait_min` real,
	`filmed` text NOT NULL,
	`dosed_by` text NOT NULL,
	`watched_by` text NOT NULL,
	`other_water_barred` integer NOT NULL,
	`control_property_id` text,
	`control_result` text NOT NULL,
	`result` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`unit_id`) REFERENCES `units`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`control_property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "tests_kind" CHECK("tests"."kind" in ('dye', 'trace', 'smoke', 'flow', 'excavation', 'statement')),
	CONSTRAINT "tests_control_result" CHECK("tests"."control_result" in ('not-run', 'negative', 'positive')),
	CONSTRAINT "tests_result" CHECK("tests"."result" in ('positive', 'not-seen', 'inconclusive'))
);
--> statement-breakpoint
CREATE TABLE `tie_ins` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`label` text NOT NULL,
	`parent_id` text,
	`station_cft` integer,
	`side` text NOT NULL,
	`diameter_in` real,
	`material` text NOT NULL,
	`fitting` text NOT NULL,
	`kind` text NOT NULL,
	`property_id` text,
	`inactive` integer NOT NULL,
	`settled_reason` text NOT NULL,
	`settled_by` text NOT NULL,
	`settled_on` text,
	`owner_accepted` integer NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`parent_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "tie_ins_side" CHECK("tie_ins"."side" in ('left', 'right', 'crown', 'unknown')),
	CONSTRAINT "tie_ins_material" CHECK("tie_ins"."material" in ('vitrified-clay', 'concrete', 'cast-iron', 'ductile-iron', 'pvc', 'abs', 'polyethylene', 'bituminous-fibre', 'asbestos-cement', 'cured-in-place-liner', 'unknown')),
	CONSTRAINT "tie_ins_fitting" CHECK("tie_ins"."fitting" in ('wye', 'tee', 'saddle', 'break-in', 'unknown')),
	CONSTRAINT "tie_ins_kind" CHECK("tie_ins"."kind" in ('unknown', 'building', 'yard-drain', 'roof-drain', 'cleanout-riser', 'capped-stub', 'old-septic-line'))
);
--> statement-breakpoint
CREATE TABLE `units` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`name` text NOT NULL,
	`use` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "units_use" CHECK("units"."use" in ('dwelling', 'business'))
);
--> statement-breakpoint
CREATE TABLE `uploads` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`type` text NOT NULL,
	`bytes` integer NOT NULL,
	`sha256` text NOT NULL,
	`added_by` text NOT NULL,
	`added_at` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `uploads_id` ON `uploads` (`id`);--> statement-breakpoint
CREATE TABLE `users` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`email` text NOT NULL,
	`email_key` text NOT NULL,
	`role` text NOT NULL,
	`password_hash` text NOT NULL,
	`disabled` integer NOT NULL,
	`created_at` text NOT NULL,
	CONSTRAINT "users_role" CHECK("users"."role" in ('admin', 'office', 'field', 'viewer'))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `users_email` ON `users` (`email_key`);--> statement-breakpoint
CREATE TABLE `waivers` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`hold_key` text NOT NULL,
	`reason` text NOT NULL,
	`by` text NOT NULL,
	`on` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `waivers_hold` ON `waivers` (`line_id`,`hold_key`);