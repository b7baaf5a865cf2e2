CREATE TABLE `bends` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`station_cft` integer NOT NULL,
	`turn` text NOT NULL,
	`turn_deg` real NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `fixed_points` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`name` text NOT NULL,
	`east_cft` integer,
	`north_cft` integer,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `plan_pictures` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`upload_id` text NOT NULL,
	`width_px` integer NOT NULL,
	`height_px` integer NOT NULL,
	`one_x_px` integer NOT NULL,
	`one_y_px` integer NOT NULL,
	`other_x_px` integer NOT NULL,
	`other_y_px` integer NOT NULL,
	`apart_cft` integer NOT NULL,
	`main_x_px` integer NOT NULL,
	`main_y_px` integer NOT NULL,
	`up_deg` real NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`upload_id`) REFERENCES `uploads`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `plan_shapes` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`name` text NOT NULL,
	`property_id` text,
	`outline` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`property_id`) REFERENCES `properties`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `reconnections` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`tie_in_id` text NOT NULL,
	`lower_access_cft` integer,
	`from_lower_cft` integer,
	`upper_access_cft` integer,
	`from_upper_cft` integer,
	`measured_by` text NOT NULL,
	`measured_on` text,
	`opened_run_id` text,
	`opened_s` real,
	`opened_by` text NOT NULL,
	`opened_on` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`opened_run_id`) REFERENCES `runs`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `reconnections_tie_in` ON `reconnections` (`line_id`,`tie_in_id`);--> statement-breakpoint
CREATE TABLE `ties` (
	`line_id` text NOT NULL,
	`id` text NOT NULL,
	`position` integer NOT NULL,
	`tie_in_id` text,
	`point_id` text,
	`station_cft` integer,
	`from_id` text NOT NULL,
	`from_distance_cft` integer NOT NULL,
	`other_id` text NOT NULL,
	`other_distance_cft` integer NOT NULL,
	`apart_cft` integer,
	`side` text NOT NULL,
	`taped_by` text NOT NULL,
	`taped_on` text,
	`note` text NOT NULL,
	PRIMARY KEY(`line_id`, `id`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`tie_in_id`) REFERENCES `tie_ins`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`point_id`) REFERENCES `points`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`from_id`) REFERENCES `fixed_points`(`line_id`,`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`line_id`,`other_id`) REFERENCES `fixed_points`(`line_id`,`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
ALTER TABLE `lines` ADD `bearing_deg` real;--> statement-breakpoint
ALTER TABLE `lines` ADD `bearing_from` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `observations` ADD `water_depth_in` real;