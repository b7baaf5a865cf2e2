ALTER TABLE `notices` ADD `also_in` text;--> statement-breakpoint
ALTER TABLE `office` ADD `both_languages` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `properties` ADD `both_languages` integer DEFAULT false NOT NULL;