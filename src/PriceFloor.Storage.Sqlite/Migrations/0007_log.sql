-- What happened: movements of pieces and entries of the bench log, as integers. A correction ends a line and adds another; a withdrawal ends it.

-- Names in the log, each once.
CREATE TABLE name (
    id   INTEGER PRIMARY KEY,
    kind TEXT    NOT NULL,                 -- source, design, channel, currency, stall, step, piece
    key  TEXT    NOT NULL,
    UNIQUE (kind, key)
) STRICT;

-- What ids of lines and orders are hashed with. It is kept here, so that a restored store knows its lines again.
CREATE TABLE log_secret (
    only   INTEGER NOT NULL PRIMARY KEY CHECK (only = 1),
    secret BLOB    NOT NULL
) STRICT;

INSERT INTO log_secret (only, secret) VALUES (1, randomblob(32));

-- What was last said of a source.
CREATE TABLE log_source (
    source         INTEGER NOT NULL PRIMARY KEY REFERENCES name (id),
    whole_days     INTEGER NOT NULL,       -- 1: its minutes are all the minutes of its days
    counts_as_made INTEGER NOT NULL        -- 1: good pieces of its last step are made
) STRICT;

-- The lines of one transaction.
CREATE TABLE log_batch (
    id   INTEGER PRIMARY KEY,
    list TEXT    NOT NULL,                 -- movement or bench
    at   INTEGER NOT NULL,                 -- microseconds since 1970 UTC; never goes back
    by   TEXT    NOT NULL,                 -- name of the key that sent them
    last INTEGER NOT NULL                  -- the last position that it used, for a line or for ending some
) STRICT;

CREATE INDEX log_batch_of ON log_batch (list, at, last);

CREATE TABLE movement (
    position         INTEGER PRIMARY KEY,
    source           INTEGER NOT NULL,
    ref              BLOB    NOT NULL,     -- 16 bytes of HMAC-SHA256
    design           INTEGER NOT NULL,
    day              INTEGER NOT NULL,     -- days since 0001-01-01
    what             INTEGER NOT NULL,
    place            INTEGER,              -- the channel
    currency         INTEGER,
    pieces           INTEGER NOT NULL,
    paid             INTEGER,              -- for all pieces, in minor units, as all amounts
    listed           INTEGER,              -- for one piece
    fees             INTEGER,              -- the line's part of those of its order, as shipping
    shipping_charged INTEGER,
    shipping_cost    INTEGER,
    stall            INTEGER,
    grade            INTEGER,              -- 2: seconds
    resale           INTEGER,              -- 0: came back and cannot be sold again
    piece            INTEGER,
    order_mark       BLOB,                 -- the order: 8 bytes of HMAC-SHA256
    batch            INTEGER NOT NULL,
    ended            INTEGER               -- the position at which it was corrected or withdrawn
) STRICT;

CREATE UNIQUE INDEX movement_ref ON movement (source, ref) WHERE ended IS NULL;
CREATE INDEX movement_design ON movement (design, day);

CREATE TABLE bench (
    position INTEGER PRIMARY KEY,
    source   INTEGER NOT NULL,
    ref      BLOB    NOT NULL,
    design   INTEGER,                      -- null: work away from pieces
    day      INTEGER NOT NULL,
    step     INTEGER,                      -- null: the whole piece
    started  INTEGER,
    good     INTEGER,
    minutes  INTEGER,                      -- hundredths, for the whole batch
    batch    INTEGER NOT NULL,
    ended    INTEGER
) STRICT;

CREATE UNIQUE INDEX bench_ref ON bench (source, ref) WHERE ended IS NULL;
CREATE INDEX bench_design ON bench (design, day);
