-- A key may be held to some profiles, goes on beside its successor for a while, and tells when it was last used.
ALTER TABLE access_key ADD COLUMN profiles TEXT;            -- keys of cost profiles separated by spaces; null: all
ALTER TABLE access_key ADD COLUMN last_used INTEGER;        -- microseconds since 1970 UTC, whole minutes; null: not since it was made
ALTER TABLE access_key ADD COLUMN previous_hash BLOB;       -- the secret before the last rotation
ALTER TABLE access_key ADD COLUMN previous_until INTEGER;   -- how long it still opens

-- Who made, rotated and deleted keys. Documents need no such table: every revision has its author.
CREATE TABLE key_event (
    position INTEGER PRIMARY KEY,
    at       INTEGER NOT NULL,             -- microseconds since 1970 UTC
    by       TEXT    NOT NULL,             -- name of the key that did it
    name     TEXT    NOT NULL,             -- name of the key that it was done to
    what     TEXT    NOT NULL              -- created, rotated, deleted
) STRICT;
