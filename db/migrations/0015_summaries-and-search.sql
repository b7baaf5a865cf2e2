CREATE TABLE `due_things` (
	`line_id` text NOT NULL,
	`position` integer NOT NULL,
	`kind` text NOT NULL,
	`sort_day` text NOT NULL,
	`sentence` text NOT NULL,
	`question` text NOT NULL,
	PRIMARY KEY(`line_id`, `position`),
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `due_things_desk` ON `due_things` (`kind`,`sort_day`,`sentence`);--> statement-breakpoint
CREATE TABLE `line_summaries` (
	`line_id` text PRIMARY KEY NOT NULL,
	`version` integer DEFAULT 0 NOT NULL,
	`stale` integer DEFAULT true NOT NULL,
	`day` text DEFAULT '' NOT NULL,
	`closed` integer DEFAULT false NOT NULL,
	`waiting` integer DEFAULT true NOT NULL,
	`sort_name` text DEFAULT '' NOT NULL,
	`pressing` integer DEFAULT 0 NOT NULL,
	`sentence` text DEFAULT '' NOT NULL,
	`question` text,
	`open_json` text DEFAULT '[]' NOT NULL,
	`open_count` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `lines`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `line_summaries_stale` ON `line_summaries` (`stale`) WHERE "line_summaries"."stale" = 1;--> statement-breakpoint
CREATE INDEX `line_summaries_desk` ON `line_summaries` (`waiting`,`day`);--> statement-breakpoint
CREATE INDEX `line_summaries_waiting` ON `line_summaries` (`waiting`,"pressing" DESC,`sort_name`);--> statement-breakpoint
CREATE INDEX `line_summaries_list` ON `line_summaries` (`closed`,"pressing" DESC,`sort_name`);--> statement-breakpoint
CREATE TABLE `search_texts` (
	`id` integer PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`kind` text NOT NULL,
	`row_id` text NOT NULL,
	`title` text NOT NULL,
	`detail` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `search_texts_row` ON `search_texts` (`line_id`,`kind`,`row_id`);--> statement-breakpoint
CREATE TABLE `tallies` (
	`name` text PRIMARY KEY NOT NULL,
	`count` integer DEFAULT 0 NOT NULL
);
--> statement-breakpoint
INSERT INTO line_summaries (line_id, closed, sort_name) SELECT id, closed_on IS NOT NULL, lower(name) FROM lines;
--> statement-breakpoint
INSERT INTO tallies (name, count) VALUES ('open', (SELECT count(*) FROM lines WHERE closed_on IS NULL)), ('closed', (SELECT count(*) FROM lines WHERE closed_on IS NOT NULL)), ('late', 0), ('due', 0), ('blocked', 0), ('waiting', 0);
--> statement-breakpoint
CREATE VIRTUAL TABLE search_index USING fts5(title, detail, content='', tokenize="unicode61 remove_diacritics 2", prefix='1 2 3');
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT id, 'line', '', name, coalesce(l.town, '') || ' ' || coalesce(l.main_note, '') || ' ' || coalesce(l.note, '') FROM lines l;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'property', id, trim(json_extract(r.address_json, '$.street') || ' ' || json_extract(r.address_json, '$.unit')), coalesce(json_extract(r.address_json, '$.street'), '') || ' ' || coalesce(json_extract(r.address_json, '$.unit'), '') || ' ' || coalesce(json_extract(r.address_json, '$.city'), '') || ' ' || coalesce(json_extract(r.address_json, '$.state'), '') || ' ' || coalesce(json_extract(r.address_json, '$.zip'), '') || ' ' || coalesce(r.parcel, '') || ' ' || coalesce(r.legal_description, '') || ' ' || coalesce(r.note, '') FROM `properties` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'party', id, coalesce(r.name, ''), coalesce(json_extract(r.mailing_json, '$.street'), '') || ' ' || coalesce(json_extract(r.mailing_json, '$.unit'), '') || ' ' || coalesce(json_extract(r.mailing_json, '$.city'), '') || ' ' || coalesce(json_extract(r.mailing_json, '$.state'), '') || ' ' || coalesce(json_extract(r.mailing_json, '$.zip'), '') || ' ' || coalesce(r.email, '') || ' ' || coalesce(r.phone, '') || ' ' || coalesce(r.needs, '') || ' ' || coalesce(r.note, '') FROM `parties` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'permit record', id, coalesce(r.title, ''), coalesce(r.number, '') || ' ' || coalesce(r.dated, '') || ' ' || coalesce(r.note, '') FROM `records` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'record entry', id, coalesce(r.label, ''), coalesce(r.explanation, '') || ' ' || coalesce(r.note, '') FROM `entries` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'run', id, coalesce(r.name, ''), coalesce(r.ran_on, '') || ' ' || coalesce(r.operator, '') || ' ' || coalesce(r.access_point, '') || ' ' || coalesce(r.note, '') FROM `runs` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'tie-in', id, coalesce(r.label, ''), coalesce(r.settled_reason, '') || ' ' || coalesce(r.note, '') FROM `tie_ins` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'agreement', id, coalesce(r.title, ''), coalesce(r.recording_number, '') || ' ' || coalesce(r.terms, '') FROM `agreements` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'scope item', id, coalesce(r.title, ''), coalesce(r.alleged_cause, '') || ' ' || coalesce(r.note, '') FROM `scope_items` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'permit', id, coalesce(r.number, ''), coalesce(r.note, '') FROM `permits` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'locate ticket', id, coalesce(r.number, ''), coalesce(r.called_on, '') || ' ' || coalesce(r.note, '') FROM `locate_tickets` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'inspection', id, coalesce(r.title, ''), coalesce(r.inspector, '') || ' ' || coalesce(r.note, '') FROM `inspections` r;
--> statement-breakpoint
INSERT INTO search_texts (line_id, kind, row_id, title, detail) SELECT line_id, 'stored file', id, coalesce(r.name, ''), coalesce(r.note, '') FROM `uploads` r;
--> statement-breakpoint
INSERT INTO search_index (rowid, title, detail) SELECT t.id, replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(t.title, 'ł', 'l'), 'Ł', 'l'), 'ø', 'o'), 'Ø', 'o'), 'đ', 'd'), 'Đ', 'd'), 'ß', 'ss'), 'æ', 'ae'), 'Æ', 'ae'), 'œ', 'oe'), 'Œ', 'oe'), replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(t.detail, 'ł', 'l'), 'Ł', 'l'), 'ø', 'o'), 'Ø', 'o'), 'đ', 'd'), 'Đ', 'd'), 'ß', 'ss'), 'æ', 'ae'), 'Æ', 'ae'), 'œ', 'oe'), 'Œ', 'oe') FROM search_texts t;
