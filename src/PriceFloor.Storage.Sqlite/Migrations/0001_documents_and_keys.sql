-- Every change of a document is a numbered, immutable revision; a null body is a delete.
CREATE TABLE revision (
    position INTEGER PRIMARY KEY,          -- order of all writes, of all kinds
    kind     TEXT    NOT NULL,
    key      TEXT    NOT NULL,
    number   INTEGER NOT NULL,             -- 1, 2, 3 ... for each document
    saved_at INTEGER NOT NULL,             -- microseconds since 1970 UTC; never goes back
    saved_by TEXT    NOT NULL,             -- name of the key that wrote it
    body     TEXT,
    UNIQUE (kind, key, number)
) STRICT;

-- The newest revision of each document, so that reads never walk its history.
CREATE TABLE head (
    kind     TEXT    NOT NULL,
    key      TEXT    NOT NULL,
    position INTEGER NOT NULL REFERENCES revision (position),
    deleted  INTEGER NOT NULL,
    PRIMARY KEY (kind, key)
) STRICT, WITHOUT ROWID;

-- What the present documents refer to, so that nothing in use can be deleted.
CREATE TABLE reference (
    from_kind TEXT NOT NULL,
    from_key  TEXT NOT NULL,
    to_kind   TEXT NOT NULL,
    to_key    TEXT NOT NULL,
    PRIMARY KEY (from_kind, from_key, to_kind, to_key)
) STRICT, WITHOUT ROWID;

CREATE INDEX reference_to ON reference (to_kind, to_key);

CREATE TABLE access_key (
    name       TEXT    NOT NULL PRIMARY KEY,
    hash       BLOB    NOT NULL UNIQUE,    -- SHA-256 of the key; the key itself is never kept
    scopes     TEXT    NOT NULL,           -- separated by spaces
    created_at INTEGER NOT NULL,
    expires_at INTEGER
) STRICT;
