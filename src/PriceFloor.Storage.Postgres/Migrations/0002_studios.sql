-- A host has a key of each of its studios, beside the studio's own row of it.
ALTER TABLE access_key DROP CONSTRAINT access_key_hash_key;
ALTER TABLE access_key ADD UNIQUE (studio, hash);

-- A studio with a life and a secret of its own. Deleting its row deletes everything that it has.
CREATE FUNCTION begin_studio(named text) RETURNS integer LANGUAGE plpgsql AS $$
DECLARE
    made integer;
BEGIN
    INSERT INTO studio (key) VALUES (named) RETURNING id INTO made;
    PERFORM set_config('pf.studio', made::text, true);
    INSERT INTO life (name, timeline, numbers_above) VALUES (substr(replace(gen_random_uuid()::text, '-', ''), 1, 12), '', 0);
    INSERT INTO log_secret (secret)
        VALUES (sha256(convert_to(gen_random_uuid()::text || gen_random_uuid()::text || gen_random_uuid()::text, 'UTF8')));
    RETURN made;
END $$;

DO $$
BEGIN
    IF EXISTS (SELECT FROM pg_roles WHERE rolname = 'pricefloor') THEN -- serves, and owns nothing
        GRANT INSERT, DELETE ON studio TO pricefloor;
    END IF;
END $$;
