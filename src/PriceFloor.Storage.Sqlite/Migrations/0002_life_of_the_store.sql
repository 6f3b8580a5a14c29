-- Which life of the store this is. Another begins when a backup takes its place and when a document is forgotten: what callers hold
-- of the one before (cursors, revision numbers) must never be taken for something of this one.
CREATE TABLE life (
    only          INTEGER NOT NULL PRIMARY KEY CHECK (only = 1),
    name          TEXT    NOT NULL,        -- random; stands in every cursor
    numbers_above INTEGER NOT NULL         -- the next revision of any document bears a higher number than this
) STRICT;

INSERT INTO life (only, name, numbers_above) VALUES (1, lower(hex(randomblob(6))), 0);

-- What readiness writes, to know that the store can be written.
CREATE TABLE probe (
    only       INTEGER NOT NULL PRIMARY KEY CHECK (only = 1),
    written_at INTEGER NOT NULL            -- microseconds since 1970 UTC
) STRICT;
