CREATE TABLE `applications` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`permit_kind` text NOT NULL,
	`applicant` text NOT NULL,
	`applicant_is` text NOT NULL,
	`attested_on` text,
	`attestation_id` text,
	`work_type` text NOT NULL,
	`valuation_cents` integer,
	`traffic` text NOT NULL,
	`pedestrians` text NOT NULL,
	`insured_as` text NOT NULL,
	`certificate_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`attestation_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`certificate_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `requirement_conditions` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`requirement_id` text NOT NULL,
	`fact` text NOT NULL,
	`limit_hundredths` integer,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `drawing_items` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`item` text NOT NULL,
	`title` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `drawing_marks` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`item_id` text NOT NULL,
	`state` text NOT NULL,
	`by` text NOT NULL,
	`on` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `owner_authorizations` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`property_id` text NOT NULL,
	`party_id` text NOT NULL,
	`signed_on` text,
	`upload_id` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`party_id`) REFERENCES `parties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `pavement_rules` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`surface` text NOT NULL,
	`beyond_cft` integer NOT NULL,
	`least_width_cft` integer,
	`least_length_cft` integer,
	`no_cut_years` integer,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `permit_orders` (
	`id` text NOT NULL,
	`authority_id` text NOT NULL,
	`kind` text NOT NULL,
	`step` text NOT NULL,
	`waits_for` text NOT NULL,
	`until` text NOT NULL,
	`citation` text NOT NULL,
	`as_of` text NOT NULL,
	`position` integer NOT NULL,
	PRIMARY KEY(`authority_id`, `id`),
	FOREIGN KEY (`authority_id`) REFERENCES `authorities`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `proposed_pipes` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`item_id` text NOT NULL,
	`material` text NOT NULL,
	`diameter_in` real,
	`length_cft` integer,
	`slope_bp` integer,
	`method` text NOT NULL,
	`bedding` text NOT NULL,
	`joint` text NOT NULL,
	`connection` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`item_id`) REFERENCES `scope_items`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `surface_cuts` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`from_cft` integer NOT NULL,
	`to_cft` integer NOT NULL,
	`surface` text NOT NULL,
	`trench_width_cft` integer,
	`depth_cft` integer,
	`walls` text NOT NULL,
	`paved_on` text,
	`restoration` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `office` ADD `compensation` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `compensation_expires_on` text;--> statement-breakpoint
ALTER TABLE `office` ADD `business_license` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `office` ADD `business_license_expires_on` text;--> statement-breakpoint
ALTER TABLE `requirements` ADD `paper` text;