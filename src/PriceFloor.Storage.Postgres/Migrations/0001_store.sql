-- Every row belongs to a studio, which begins every key and every index. A session names its studio (pf.studio), and the policies at the end show it no
-- other's rows. Without a name, every statement fails.
CREATE TABLE studio (
    id  integer PRIMARY KEY GENERATED ALWAYS AS IDENTITY,
    key text COLLATE "C" NOT NULL UNIQUE
);

CREATE FUNCTION this_studio() RETURNS integer LANGUAGE sql STABLE PARALLEL SAFE AS $$ SELECT current_setting('pf.studio')::integer $$;

-- The row that a writer locks first, so positions are in order of commit, and what must not be taken for something of an earlier life.
CREATE TABLE life (
    studio        integer NOT NULL DEFAULT this_studio() PRIMARY KEY REFERENCES studio ON DELETE CASCADE,
    name          text   COLLATE "C" NOT NULL,    -- random; is in every cursor
    timeline      text   COLLATE "C" NOT NULL,    -- of which history of which database these rows are; empty: not opened yet
    numbers_above bigint NOT NULL,                -- the next revision of any document has a higher number than this
    server        text   COLLATE "C"              -- random; the process that serves the studio
) WITH (fillfactor = 50);

-- Every change of a document is a numbered, immutable revision; a null body is a delete.
CREATE TABLE revision (
    studio   integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    position bigint NOT NULL,                     -- 1, 2, 3 ...: order of all writes, of all kinds
    kind     text   COLLATE "C" NOT NULL,
    key      text   COLLATE "C" NOT NULL,
    number   bigint NOT NULL,                     -- 1, 2, 3 ... for each document
    saved_at bigint NOT NULL,                     -- microseconds since 1970 UTC; never goes back
    saved_by text   COLLATE "C" NOT NULL,         -- name of the key that wrote it
    body     text   COLLATE "C",                  -- not jsonb: whether a document is the same again is a question of its letters
    PRIMARY KEY (studio, position),
    UNIQUE (studio, kind, key, number)
);

CREATE INDEX revision_at ON revision (studio, kind, key, saved_at, number);
CREATE INDEX revision_in_time ON revision (studio, saved_at, position);

-- The newest revision of each document, so reads never walk its history.
CREATE TABLE head (
    studio   integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    kind     text   COLLATE "C" NOT NULL,
    key      text   COLLATE "C" NOT NULL,
    position bigint NOT NULL,
    deleted  bigint NOT NULL,
    PRIMARY KEY (studio, kind, key),
    FOREIGN KEY (studio, position) REFERENCES revision (studio, position) ON DELETE CASCADE
);

CREATE INDEX head_position ON head (studio, position);

-- What the present documents refer to, so nothing in use can be deleted.
CREATE TABLE reference (
    studio    integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    from_kind text COLLATE "C" NOT NULL,
    from_key  text COLLATE "C" NOT NULL,
    to_kind   text COLLATE "C" NOT NULL,
    to_key    text COLLATE "C" NOT NULL,
    PRIMARY KEY (studio, from_kind, from_key, to_kind, to_key)
);

CREATE INDEX reference_to ON reference (studio, to_kind, to_key);

CREATE TABLE access_key (
    studio         integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    name           text   COLLATE "C" NOT NULL,
    hash           bytea  NOT NULL UNIQUE,        -- SHA-256 of the key; the key itself is never kept. No two studios have the same
    scopes         text   COLLATE "C" NOT NULL,   -- separated by spaces
    created_at     bigint NOT NULL,
    expires_at     bigint,
    profiles       text   COLLATE "C",            -- keys of cost profiles separated by spaces; null: all
    last_used      bigint,                        -- microseconds since 1970 UTC, whole minutes; null: not since it was made
    previous_hash  bytea,                         -- the secret before the last rotation
    previous_until bigint,                        -- how long it still opens
    PRIMARY KEY (studio, name)
);

-- What was done to keys and to the whole store.
CREATE TABLE event (
    studio   integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    position bigint NOT NULL,
    at       bigint NOT NULL,                     -- microseconds since 1970 UTC
    by       text   COLLATE "C" NOT NULL,         -- name of the key that did it
    kind     text   COLLATE "C" NOT NULL,         -- key, store, or the kind of a forgotten document
    name     text   COLLATE "C" NOT NULL,
    what     text   COLLATE "C" NOT NULL,
    PRIMARY KEY (studio, position)
);

-- What readiness writes, to know that the store can be written.
CREATE TABLE probe (
    studio     integer NOT NULL DEFAULT this_studio() PRIMARY KEY REFERENCES studio ON DELETE CASCADE,
    written_at bigint NOT NULL                    -- microseconds since 1970 UTC
);

-- Names in the log, each once.
CREATE TABLE name (
    studio integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    id     bigint NOT NULL,
    kind   text   COLLATE "C" NOT NULL,           -- source, design, channel, currency, stall, step, piece
    key    text   COLLATE "C" NOT NULL,
    PRIMARY KEY (studio, id),
    UNIQUE (studio, kind, key)
);

-- What ids of lines and orders are hashed with. It is kept here, so a restored store knows its lines again.
CREATE TABLE log_secret (
    studio integer NOT NULL DEFAULT this_studio() PRIMARY KEY REFERENCES studio ON DELETE CASCADE,
    secret bytea NOT NULL
);

-- What was last said of a source.
CREATE TABLE log_source (
    studio         integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    source         bigint NOT NULL,
    whole_days     bigint NOT NULL,               -- 1: its minutes are all the minutes of its days
    counts_as_made bigint NOT NULL,               -- 1: good pieces of its last step are made
    PRIMARY KEY (studio, source),
    FOREIGN KEY (studio, source) REFERENCES name (studio, id)
);

-- The lines of one transaction.
CREATE TABLE log_batch (
    studio integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    id     bigint NOT NULL,
    list   text   COLLATE "C" NOT NULL,           -- movement or bench
    at     bigint NOT NULL,                       -- microseconds since 1970 UTC; never goes back
    by     text   COLLATE "C" NOT NULL,           -- name of the key that sent them
    last   bigint NOT NULL,                       -- the last position that it used, for a line or for ending some
    PRIMARY KEY (studio, id)
);

CREATE INDEX log_batch_of ON log_batch (studio, list, at, last);

CREATE TABLE movement (
    studio           integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    position         bigint NOT NULL,
    source           bigint NOT NULL,
    ref              bytea  NOT NULL,             -- 16 bytes of HMAC-SHA256
    design           bigint NOT NULL,
    day              bigint NOT NULL,             -- days since 0001-01-01
    what             bigint NOT NULL,
    place            bigint,                      -- the channel
    currency         bigint,
    pieces           bigint NOT NULL,
    paid             bigint,                      -- for all pieces, in minor units, as all amounts
    listed           bigint,                      -- for one piece
    fees             bigint,                      -- the line's part of those of its order, as shipping
    shipping_charged bigint,
    shipping_cost    bigint,
    stall            bigint,
    grade            bigint,                      -- 2: seconds
    resale           bigint,                      -- 0: came back and cannot be sold again
    piece            bigint,
    order_mark       bytea,                       -- the order: 8 bytes of HMAC-SHA256
    batch            bigint NOT NULL,
    ended            bigint,                      -- the position at which it was corrected or withdrawn
    PRIMARY KEY (studio, position)
);

CREATE UNIQUE INDEX movement_ref ON movement (studio, source, ref) WHERE ended IS NULL;
CREATE INDEX movement_design ON movement (studio, design, day);
CREATE INDEX movement_ended ON movement (studio, ended) WHERE ended IS NOT NULL;

CREATE TABLE bench (
    studio   integer NOT NULL DEFAULT this_studio() REFERENCES studio ON DELETE CASCADE,
    position bigint NOT NULL,
    source   bigint NOT NULL,
    ref      bytea  NOT NULL,
    design   bigint,                              -- null: work away from pieces
    day      bigint NOT NULL,
    step     bigint,                              -- null: the whole piece
    started  bigint,
    good     bigint,
    minutes  bigint,                              -- hundredths, for the whole batch
    batch    bigint NOT NULL,
    ended    bigint,
    PRIMARY KEY (studio, position)
);

CREATE UNIQUE INDEX bench_ref ON bench (studio, source, ref) WHERE ended IS NULL;
CREATE INDEX bench_design ON bench (studio, design, day);
CREATE INDEX bench_ended ON bench (studio, ended) WHERE ended IS NOT NULL;

-- Numbers without gaps, given under the lock of the studio's life: a sequence would leave gaps, and give them in another order than that of the commits.
CREATE FUNCTION next_position() RETURNS bigint LANGUAGE sql VOLATILE AS $$ SELECT coalesce(max(position), 0) + 1 FROM revision $$;
CREATE FUNCTION next_event() RETURNS bigint LANGUAGE sql VOLATILE AS $$ SELECT coalesce(max(position), 0) + 1 FROM event $$;
CREATE FUNCTION next_name() RETURNS bigint LANGUAGE sql VOLATILE AS $$ SELECT coalesce(max(id), 0) + 1 FROM name $$;
CREATE FUNCTION next_batch() RETURNS bigint LANGUAGE sql VOLATILE AS $$ SELECT coalesce(max(id), 0) + 1 FROM log_batch $$;
ALTER TABLE revision ALTER COLUMN position SET DEFAULT next_position();
ALTER TABLE event ALTER COLUMN position SET DEFAULT next_event();
ALTER TABLE name ALTER COLUMN id SET DEFAULT next_name();
ALTER TABLE log_batch ALTER COLUMN id SET DEFAULT next_batch();

-- One studio exists unasked.
INSERT INTO studio (key) VALUES ('first');
INSERT INTO life (studio, name, timeline, numbers_above)
    SELECT id, substr(replace(gen_random_uuid()::text, '-', ''), 1, 12), '', 0 FROM studio;
INSERT INTO log_secret (studio, secret)
    SELECT id, sha256(convert_to(gen_random_uuid()::text || gen_random_uuid()::text || gen_random_uuid()::text, 'UTF8')) FROM studio;

DO $$
DECLARE
    each text;
    kept text[] := ARRAY['life', 'revision', 'head', 'reference', 'access_key', 'event', 'probe', 'name', 'log_secret', 'log_source', 'log_batch',
        'movement', 'bench'];
BEGIN
    FOREACH each IN ARRAY kept LOOP
        EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', each);
        EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', each); -- also where the owner serves
        EXECUTE format('CREATE POLICY own ON %I USING (studio = this_studio())', each);
    END LOOP;

    IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'pricefloor') THEN -- serves, and owns nothing
        FOREACH each IN ARRAY kept LOOP
            EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON %I TO pricefloor', each);
        END LOOP;

        GRANT SELECT ON migration, studio TO pricefloor;
    END IF;
END $$;
