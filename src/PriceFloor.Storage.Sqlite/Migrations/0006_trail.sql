-- Backups, restores and forgetting stand in the trail beside what was done to keys: the table is called by what it holds, and each row says of what kind it is.
ALTER TABLE key_event RENAME TO event;
ALTER TABLE event ADD COLUMN kind TEXT NOT NULL DEFAULT 'key';   -- key, store, or the kind of a forgotten document
