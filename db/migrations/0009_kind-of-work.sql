ALTER TABLE `scope_items` ADD `kind` text DEFAULT 'unknown' NOT NULL;--> statement-breakpoint
-- What is done is said where its title names one kind of work and no other; all else stays unknown,
-- which counts as the strictest that its words allow.
WITH words (kind, word) AS (VALUES
	('burst', 'burst%'),
	('line', 'lining'), ('line', 'liner'), ('line', 'liners'), ('line', 'lined'), ('line', 'relining'), ('line', 'reline'), ('line', 'cured-in-place%'),
	('dig-and-replace', 'dig'), ('dig-and-replace', 'digs'), ('dig-and-replace', 'digging'), ('dig-and-replace', 'excavat%'), ('dig-and-replace', 'trench%'), ('dig-and-replace', 'replac%'), ('dig-and-replace', 'relay'),
	('spot-repair', 'spot'),
	('cap', 'cap'), ('cap', 'caps'), ('cap', 'capping'), ('cap', 'plug'), ('cap', 'plugs'), ('cap', 'disconnect%'), ('cap', 'abandon%'),
	('clear', 'root'), ('clear', 'roots'), ('clear', 'cut'), ('clear', 'cutting'), ('clear', 'auger%'), ('clear', 'snak%'), ('clear', 'descal%'), ('clear', 'clear'), ('clear', 'clearing'),
	('clean', 'jet'), ('clean', 'jetting'), ('clean', 'flush%'), ('clean', 'clean'), ('clean', 'cleaning'),
	('reconnect', 'reconnect%'), ('reconnect', 'reinstat%'), ('reconnect', 'reopen%'), ('reconnect', 'open'),
	('test', 'camera'), ('test', 'video'), ('test', 'dye'), ('test', 'smoke'), ('test', 'test'), ('test', 'tests'), ('test', 'testing'),
	('restore', 'restor%'), ('restore', 'pav%'), ('restore', 'asphalt'), ('restore', 'landscap%'), ('restore', 'turf'),
	('permit-fee', 'permit'), ('permit-fee', 'permits'), ('permit-fee', 'fee'), ('permit-fee', 'fees'),
	('other', 'mobili%'), ('other', 'overhead')
),
titles (line_id, id, title) AS (
	SELECT line_id, id, ' ' || replace(replace(replace(replace(replace(replace(lower(title), ',', ' '), '.', ' '), ':', ' '), ';', ' '), '(', ' '), ')', ' ') || ' '
	FROM scope_items
),
named (line_id, id, kind) AS (
	SELECT titles.line_id, titles.id, words.kind
	FROM titles JOIN words ON titles.title LIKE '% ' || words.word || ' %'
	UNION
	SELECT line_id, id, 'line' FROM titles WHERE title LIKE ' line %'
)
UPDATE scope_items SET kind = coalesce((
	SELECT CASE WHEN count(DISTINCT named.kind) = 1 THEN min(named.kind) END
	FROM named WHERE named.line_id = scope_items.line_id AND named.id = scope_items.id
), 'unknown');
