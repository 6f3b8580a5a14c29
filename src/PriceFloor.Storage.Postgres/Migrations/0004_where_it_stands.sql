-- Where a studio stands is in the row that its writers lock, so asking reads one row. Triggers keep it, so no statement of this program or of the version
-- before it can forget to.
ALTER TABLE life
    ADD newest       bigint NOT NULL DEFAULT 0,   -- position of the newest revision; 0: there is none
    ADD newest_at    bigint NOT NULL DEFAULT 0,   -- when that was written, in microseconds since 1970 UTC
    ADD newest_event bigint NOT NULL DEFAULT 0;   -- position of the newest action on keys and on the whole store

-- What it is by the rows themselves: after some were deleted, and after many were put in at once.
CREATE FUNCTION tell_where_it_stands() RETURNS void LANGUAGE sql VOLATILE AS $$
    UPDATE life SET newest = coalesce((SELECT max(position) FROM revision), 0),
        newest_at = coalesce((SELECT saved_at FROM revision ORDER BY position DESC LIMIT 1), 0),
        newest_event = coalesce((SELECT max(position) FROM event), 0)
$$;

CREATE FUNCTION tell_of_revisions() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF current_setting('pf.told_later', true) IS DISTINCT FROM 'yes' THEN
        UPDATE life SET newest = a.newest, newest_at = a.newest_at
            FROM (SELECT max(position) AS newest, max(saved_at) AS newest_at FROM added) a WHERE a.newest > life.newest;
    END IF;
    RETURN NULL;
END $$;

CREATE FUNCTION tell_of_events() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF current_setting('pf.told_later', true) IS DISTINCT FROM 'yes' THEN
        UPDATE life SET newest_event = a.newest FROM (SELECT max(position) AS newest FROM added) a WHERE a.newest > life.newest_event;
    END IF;
    RETURN NULL;
END $$;

CREATE FUNCTION tell_of_deletion() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    PERFORM tell_where_it_stands();
    RETURN NULL;
END $$;

CREATE TRIGGER told AFTER INSERT ON revision REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION tell_of_revisions();
CREATE TRIGGER told AFTER INSERT ON event REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION tell_of_events();
CREATE TRIGGER untold AFTER DELETE ON revision FOR EACH STATEMENT EXECUTE FUNCTION tell_of_deletion();
CREATE TRIGGER untold AFTER DELETE ON event FOR EACH STATEMENT EXECUTE FUNCTION tell_of_deletion();

CREATE OR REPLACE FUNCTION standings(studios integer[]) RETURNS TABLE (life_name text, now_in text, remembered text, newest bigint, newest_at bigint,
    above bigint, newest_event bigint, of_studio integer) LANGUAGE plpgsql AS $$
DECLARE
    timeline_now text := substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8);
    one integer;
BEGIN
    FOREACH one IN ARRAY studios LOOP
        PERFORM set_config('pf.studio', one::text, true);
        RETURN QUERY SELECT l.name, timeline_now, split_part(l.timeline, '/', 2), l.newest, l.newest_at, l.numbers_above, l.newest_event, one FROM life l;
    END LOOP;
END $$;

-- Whoever waited for the lock is given the row as the writer before left it.
CREATE OR REPLACE FUNCTION begin_writing(studio integer) RETURNS TABLE (life_name text, now_in text, remembered text, newest bigint, newest_at bigint,
    above bigint, newest_event bigint, of_studio integer) LANGUAGE plpgsql AS $$
BEGIN
    PERFORM set_config('pf.studio', $1::text, true), set_config('lock_timeout', '5s', true);
    RETURN QUERY SELECT l.name, substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8), split_part(l.timeline, '/', 2), l.newest, l.newest_at,
        l.numbers_above, l.newest_event, $1 FROM life l FOR UPDATE;
END $$;

DO $$
DECLARE
    one integer;
BEGIN
    FOR one IN SELECT id FROM studio LOOP
        PERFORM set_config('pf.studio', one::text, true);
        PERFORM tell_where_it_stands();
    END LOOP;
END $$;

-- A head belongs to its revision, and that to the studio.
ALTER TABLE head DROP CONSTRAINT head_studio_fkey;
