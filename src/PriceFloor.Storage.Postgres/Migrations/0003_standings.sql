-- Where several studios stand, each as its own session would be told, by one statement for everybody who waits. One that is gone has no row.
CREATE FUNCTION standings(studios integer[]) RETURNS TABLE (life_name text, now_in text, remembered text, newest bigint, newest_at bigint,
    above bigint, newest_event bigint, of_studio integer) LANGUAGE plpgsql AS $$
DECLARE
    one integer;
BEGIN
    FOREACH one IN ARRAY studios LOOP
        PERFORM set_config('pf.studio', one::text, true);
        RETURN QUERY SELECT l.name, substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8), split_part(l.timeline, '/', 2),
            coalesce((SELECT max(r.position) FROM revision r), 0), coalesce((SELECT r.saved_at FROM revision r ORDER BY r.position DESC LIMIT 1), 0),
            l.numbers_above, coalesce((SELECT max(e.position) FROM event e), 0), one
        FROM life l;
    END LOOP;
END $$;

-- The same of one, behind the lock that keeps every other writer away: what stands is asked after it, so it holds what the writer before committed.
CREATE FUNCTION begin_writing(studio integer) RETURNS TABLE (life_name text, now_in text, remembered text, newest bigint, newest_at bigint,
    above bigint, newest_event bigint, of_studio integer) LANGUAGE plpgsql AS $$
BEGIN
    PERFORM set_config('pf.studio', studio::text, true), set_config('lock_timeout', '5s', true);
    PERFORM FROM life FOR UPDATE;
    RETURN QUERY SELECT * FROM standings(ARRAY[studio]);
END $$;
